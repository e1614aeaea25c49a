import type { AirReading, OpenPeriod } from './air.js';
import { minus, minutes, type Instant } from './units.js';

/** What stands in the shop's book at one moment, as far as the air is concerned. */
export interface AirKnown {
  readonly at: Instant;
  /** The latest reading, and the one before it that it does not merely correct. */
  readonly last: AirReading | undefined;
  readonly previous: AirReading | undefined;
  /** The first reading after this moment. */
  readonly next: AirReading | undefined;
  /** The latest reading was taken after a closing, outside working hours. */
  readonly readAtNight: boolean;
  /** The working day, from shortly before opening until closing, or null. */
  readonly today: WorkingDay | null;
  /** Latest opening or closing; null before the first. */
  readonly bell: Instant | null;
  /** The closure that goes on, or that nobody's reading has ended yet, is one of a whole day or more. */
  readonly closedForDays: boolean;
}

export interface WorkingDay {
  /** Who reads the air from here on reads the working day's air. */
  readonly begins: Instant;
  readonly opens: Instant;
}

/** Somebody who reads the air shortly before opening time reads the working day's air. */
const EARLY_BIRD = minutes(60);
/** Two readings this close are one reading and its correction. */
const CORRECTED_WITHIN = minutes(15);

/**
 * Walks once along opening periods and readings, both sorted by time. The function that comes back must be asked for
 * moments in their order; each answer then costs no more than the way from the moment before. `start` is where
 * the joint begins: one begun on a working day has nothing of the closure before it.
 */
export function airSweep(periods: readonly OpenPeriod[], readings: readonly AirReading[], start: Instant): (at: Instant) => AirKnown {
  const readBy = counter(readings, (one) => one.at);
  const previousBy = counter(readings, (one) => one.at);
  const closedBy = counter(periods, (one) => one.closes);
  const closedWhenRead = counter(periods, (one) => one.closes);
  const long = longClosures(periods);
  const longBy = counter(long, (one) => one.closes);
  let seen = 0;
  let readAtNight = false;
  let readAtWork: Instant | null = null;
  return (at) => {
    const count = readBy(at);
    for (const reading of readings.slice(seen, count)) {
      const closed = closedWhenRead(reading.at);
      const atWork = workingDay(periods[closed], reading.at) !== null;
      readAtNight = closed > 0 && !atWork;
      if (atWork) readAtWork = reading.at;
    }
    seen = count;
    const last = readings[count - 1];
    const closed = closedBy(at);
    const before = periods[closed - 1];
    const today = workingDay(periods[closed], at);
    const closure = long[longBy(at) - 1];
    const stillCold = closure !== undefined && start < closure.ends && (readAtWork === null || readAtWork < closure.closes);
    return {
      at,
      last,
      next: readings[count],
      previous: last === undefined ? undefined : readings[previousBy(minus(last.at, CORRECTED_WITHIN)) - 1],
      readAtNight,
      today,
      bell: today !== null && at >= today.opens ? today.opens : (before?.closes ?? null),
      // What was before the first period is not known, so it may have been a weekend.
      closedForDays: before === undefined || before.longClosureAfter || stillCold,
    };
  };
}

function workingDay(next: OpenPeriod | undefined, at: Instant): WorkingDay | null {
  if (next === undefined) return null;
  const begins = minus(next.opens, EARLY_BIRD);
  return begins <= at && at < next.closes ? { begins, opens: next.opens } : null;
}

/** Closures of a whole day or more, up to the working day after them. */
function longClosures(periods: readonly OpenPeriod[]): { readonly closes: Instant; readonly ends: number }[] {
  return periods.flatMap(({ closes, longClosureAfter }, index) => {
    const next = periods[index + 1];
    return longClosureAfter ? [{ closes, ends: next === undefined ? Infinity : minus(next.opens, EARLY_BIRD) }] : [];
  });
}

/** How many of a sorted list have come by a moment. */
function counter<T>(list: readonly T[], when: (one: T) => Instant): (at: Instant) => number {
  let count = 0;
  return (at) => {
    for (let next = list[count]; next !== undefined && when(next) <= at; next = list[count]) count += 1;
    return count;
  };
}
