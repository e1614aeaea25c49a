import { meanRate, rateBetween, rateIntegral, steadyRate, type RateTable } from './rate-table.js';
import { reachedAfter } from './reached-after.js';
import { celsius, MILLISECONDS_PER_MINUTE, minutes, minutesBetween, plus, type Celsius, type Instant, type Minutes } from './units.js';

/** The temperature at a moment; between two points it changes in a straight line. Two points at one instant are a jump. */
export interface TemperaturePoint {
  readonly at: Instant;
  readonly temperature: Celsius;
}

/**
 * The running sum of one milestone over a temperature history, up to its last point. It holds nothing but its end,
 * so one more point costs the same after ten points and after ten thousand, and every earlier line stays valid.
 */
export interface ProgressLine {
  readonly table: RateTable;
  readonly last: TemperaturePoint;
  /** `rateIntegral` at the last point: the next one needs a single look-up. */
  readonly integral: number;
  /** Shares earned up to the last point; goes on above 1. */
  readonly share: number;
  /** Exact moment at which the share reached 1, not rounded; null: not yet. */
  readonly due: Instant | null;
}

/** Rounding of a sum of shares. */
const DUST = 1e-12;
const FULL = 1 - DUST;

/** The line of a whole history, points in order of time; `earned` is the share from before its first point, less than 1. */
export function progressLine(table: RateTable, first: TemperaturePoint, rest: readonly TemperaturePoint[] = [], earned = 0): ProgressLine {
  let before = first;
  let integralBefore = rateIntegral(table, first.temperature);
  let share = earned;
  let due: Instant | null = null;
  for (const point of rest) {
    const length = lengthBetween(before, point);
    const here = rateIntegral(table, point.temperature);
    const sum = share + length * rateBetween(table, before.temperature, point.temperature, integralBefore, here);
    if (sum >= FULL && due === null) due = reachedBetween(table, before, point, 1 - share);
    share = sum;
    before = point;
    integralBefore = here;
  }
  return { table, last: before, integral: integralBefore, share, due };
}

/** A new line with one more point, not earlier than the last one. */
export function append(line: ProgressLine, point: TemperaturePoint): ProgressLine {
  const { table, last } = line;
  const integral = rateIntegral(table, point.temperature);
  const share = line.share + lengthBetween(last, point) * rateBetween(table, last.temperature, point.temperature, line.integral, integral);
  const due = line.due ?? (share >= FULL ? reachedBetween(table, last, point, 1 - line.share) : null);
  return { table, last: point, integral, share, due };
}

/** Done part of the wait at the last point, 0 to 1. */
export const shareNow = (line: ProgressLine): number => Math.min(1, line.share);

/** When the share reaches 1 (or reached it) if the joint stays at a temperature from the last point on; null: never. */
export function dueIfHeld(line: ProgressLine, temperature: Celsius = line.last.temperature): Instant | null {
  if (line.due !== null) return line.due;
  const rate = steadyRate(line.table, temperature);
  return rate > 0 ? plus(line.last.at, minutes((1 - line.share) / rate)) : null;
}

function lengthBetween(one: TemperaturePoint, other: TemperaturePoint): number {
  const length = (other.at - one.at) / MILLISECONDS_PER_MINUTE;
  if (length >= 0) return length;
  throw new RangeError(`A temperature history goes forward in time: ${other.at} stands after ${one.at}.`);
}

function reachedBetween(table: RateTable, one: TemperaturePoint, other: TemperaturePoint, needed: number): Instant {
  return plus(one.at, rampReaches(table, one.temperature, other.temperature, minutesBetween(one.at, other.at), needed));
}

/** Minutes into a linear change of temperature at which it has earned `needed`. */
export function rampReaches(table: RateTable, from: Celsius, to: Celsius, length: Minutes, needed: number): Minutes {
  const temperatureAt = (after: Minutes): Celsius => celsius(from + ((to - from) * after) / length);
  return reachedAfter({ earned: (after) => after * meanRate(table, from, temperatureAt(after)), rate: (after) => steadyRate(table, temperatureAt(after)) }, length, needed);
}
