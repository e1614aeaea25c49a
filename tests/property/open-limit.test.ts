import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airSteps } from '../../src/cure/air.js';
import type { MaterialCard, SheetRow } from '../../src/cure/card.js';
import { openLimit, type OpenClock, type OpenLimit } from '../../src/cure/open-limit.js';
import { openMinutesAt } from '../../src/cure/rows.js';
import { celsius, instant, minutes, minutesBetween, plus, type Celsius, type Instant } from '../../src/cure/units.js';
import { cardNamed } from '../support/card-shelf.js';
import { outlooks, randomBook } from '../support/random-book.js';
import { fallingRows } from '../support/random-card.js';
import { airGiven, anyStart, inOrder, momentAround, PERIODS, readingAt } from '../support/random-history.js';
import { integralAlong, trueRate, warmerCourse, type Surplus } from '../support/true-course.js';

const RUNS = { numRuns: 10_000 };
/** Ten thousand histories take a while where many share a processor. */
const PATIENCE = 120_000;
const NEVER = Infinity;
/** Rounding dust, in minutes. */
const DUST = 1 / 60_000;

const cardOpen = (rows: readonly SheetRow[]): MaterialCard => ({ ...cardNamed('P1'), openTime: { by: 'rows', rows } });
const hottestRow = (rows: readonly SheetRow[]): Celsius => celsius(Math.max(...rows.map((row) => row.temperature)));

/** Paste at any moment, air on the hot side, readings of the metal, closed at some time or not yet. */
const openClock: fc.Arbitrary<OpenClock> = anyStart.chain((pasted) =>
  fc
    .record({ given: airGiven(pasted), readings: fc.array(readingAt(momentAround(pasted)), { maxLength: 4 }).map(inOrder), until: fc.option(fc.integer({ min: 0, max: 200 })) })
    .map(({ given, readings, until }) => ({ pasted, until: until === null ? null : plus(pasted, minutes(until)), readings, air: airSteps({ start: pasted, periods: PERIODS, ...given }, 'hot') })),
);

/** What was known of the temperature between the paste and some moment. */
const knownUntil = ({ pasted, air, readings, until }: OpenClock, end: Instant): number[] => [
  ...air.flatMap((step) => (step.temperature !== null && step.from < end && (until === null || step.from <= until) ? [step.temperature] : [])),
  ...readings.filter(({ at }) => at >= pasted && at < end && (until === null || at <= until)).map(({ value }) => value),
];

/** Share of the open time that is truly used up at the limit, when it was never hotter than some temperature. */
function trulyUsed(rows: readonly SheetRow[], limit: Exclude<OpenLimit, { kind: 'none' }>, { pasted }: OpenClock, hottest: number, colder: Surplus): number {
  const course = warmerCourse([{ from: pasted, temperature: celsius(hottest) }], limit.at, colder, hottest);
  const [coldest] = rows;
  if (coldest === undefined) return NaN;
  // Colder than the coldest row the sheet states nothing longer.
  return integralAlong(course, rows.map((row) => row.temperature), (temperature) => Math.max(trueRate(rows, temperature), 1 / coldest.minutes));
}

const points = fc.array(fc.record({ seconds: fc.integer({ min: 0, max: 40_000 }), degrees: fc.oneof(fc.constant(0), fc.integer({ min: -40, max: 0 })) }), { maxLength: 4 });
const anyShortfall: fc.Arbitrary<Surplus> = points.map((list) => ({ points: [...list].sort((a, b) => a.seconds - b.seconds), unknown: 0 }));

function limitOf(rows: readonly SheetRow[], clock: OpenClock): number {
  const limit = openLimit(cardOpen(rows), clock);
  return limit.kind === 'none' ? NEVER : limit.at;
}

const knownBy = (clock: OpenClock, end: number): OpenClock => ({ ...clock, air: clock.air.filter((step) => step.from <= end), readings: clock.readings.filter(({ at }) => at <= end) });

function hotterIn(clock: OpenClock, pick: number, degrees: number): OpenClock {
  const chosen = pick % Math.max(1, clock.air.length + clock.readings.length);
  const hotter = (value: Celsius, index: number): Celsius => celsius(value + (index === chosen ? degrees : 0));
  const air = clock.air.map((step, index) => ({ ...step, temperature: step.temperature === null ? null : hotter(step.temperature, index) }));
  return { ...clock, air, readings: clock.readings.map((one, index) => ({ ...one, value: hotter(one.value, clock.air.length + index) })) };
}

describe('the open limit', () => {
  it('is never after the true end of the open time, whatever the paste truly was up to the hottest that was assumed', () => {
    fc.assert(
      fc.property(fallingRows, openClock, anyShortfall, (rows, clock, colder) => {
        const limit = openLimit(cardOpen(rows), clock);
        if (limit.kind === 'none') return;
        const hottest = limit.kind === 'too hot' ? hottestRow(rows) : Math.min(limit.temperature ?? hottestRow(rows), hottestRow(rows));
        expect(trulyUsed(rows, limit, clock, hottest, colder)).toBeLessThanOrEqual(1 + DUST);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('assumes at least the hottest that was known before it, and the hottest row where nothing was', () => {
    fc.assert(
      fc.property(fallingRows, openClock, (rows, clock) => {
        const limit = openLimit(cardOpen(rows), clock);
        if (limit.kind === 'none') return;
        const known = knownUntil(clock, limit.at);
        if (known.length > 0) expect(limit.temperature ?? -NEVER).toBeGreaterThanOrEqual(Math.max(...known));
        if (limit.kind === 'limit' && limit.temperature === null) expect(limit.minutes).toBe(rows.at(-1)?.minutes);
        if (limit.kind === 'too hot') expect(limit.temperature).toBeGreaterThan(hottestRow(rows));
      }),
      RUNS,
    );
  }, PATIENCE);

  it('is on a whole minute, never after the exact moment and less than a minute before it', () => {
    fc.assert(
      fc.property(fallingRows, openClock, (rows, clock) => {
        const limit = openLimit(cardOpen(rows), clock);
        if (limit.kind !== 'limit') return;
        const exact = plus(clock.pasted, limit.minutes);
        expect(limit.at % 60_000).toBe(0);
        expect(minutesBetween(limit.at, exact)).toBeGreaterThanOrEqual(-DUST);
        expect(minutesBetween(limit.at, exact)).toBeLessThan(1);
      }),
      RUNS,
    );
  }, PATIENCE);

  /**
   * A hot reading that comes after the open time of its row is over puts the limit before itself, although a limit that was
   * passed by then would have stayed. So it is asked only where the limit follows from what was known by its time.
   */
  it('is never made later by anything hotter, or known besides', () => {
    fc.assert(
      fc.property(fallingRows, openClock, fc.nat(), fc.integer({ min: 1, max: 300 }), readingAt(momentAround(instant(0))), (rows, clock, pick, tenths, besides) => {
        const limit = limitOf(rows, clock);
        if (limitOf(rows, knownBy(clock, limit)) !== limit) return;
        expect(limitOf(rows, hotterIn(clock, pick, tenths / 10))).toBeLessThanOrEqual(limit);
        const more = [...clock.readings, { ...besides, at: plus(clock.pasted, minutes(besides.at / 60_000)) }];
        if (clock.air.some((step) => step.from <= clock.pasted && step.temperature !== null)) expect(limitOf(rows, { ...clock, readings: more })).toBeLessThanOrEqual(limit);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('of what was entered is never later than the sheet says for any temperature that was read in the open time', () => {
    fc.assert(
      fc.property(randomBook, (book) => {
        for (const { cure, open } of outlooks(book, book.facts)) {
          if (cure.pasted === null || open.kind === 'none' || cure.card.openTime?.by !== 'rows') continue;
          const { pasted, closed, card: { openTime: { rows } } } = cure;
          const metal = cure.readings.filter(({ at, method }) => method !== 'bare' && at >= pasted && at < open.at && (closed === null || at <= closed));
          const untilClosed = closed === null ? open.at : instant(Math.min(open.at, closed));
          const air = book.facts.flatMap(({ fact, happenedAt }) => (fact.type === 'air' && happenedAt >= pasted && happenedAt < untilClosed ? [{ value: fact.value }] : []));
          for (const { value } of [...metal, ...air]) expect(minutesBetween(pasted, open.at)).toBeLessThanOrEqual((openMinutesAt(rows, value) ?? hottestMinutes(rows)) + DUST);
        }
      }),
      RUNS,
    );
  }, PATIENCE);

  it('of what was entered was passed exactly where the panel was closed, or last moved, after it', () => {
    fc.assert(
      fc.property(randomBook, (book) => {
        for (const { cure: { start }, open, openPassed } of outlooks(book, book.facts)) {
          if (open.kind !== 'none' && start !== null) expect(openPassed).toBe(start > open.at ? open.at : null);
        }
      }),
      RUNS,
    );
  }, PATIENCE);
});

/** Hotter than every row the limit is past no later than by the hottest. */
const hottestMinutes = (rows: readonly SheetRow[]): number => openMinutesAt(rows, hottestRow(rows)) ?? NaN;

