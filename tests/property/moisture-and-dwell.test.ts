import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MaterialCard } from '../../src/cure/card.js';
import { forecast } from '../../src/cure/forecast.js';
import type { JointHistory } from '../../src/cure/history.js';
import { shareAt } from '../../src/cure/progress.js';
import { celsius, minutes, minutesBetween, plus } from '../../src/cure/units.js';
import type { FactRecord } from '../../src/repair/facts.js';
import { cardNamed } from '../support/card-shelf.js';
import { airFact, answerFact, bookWith, heatFact, outlooks, record, type RandomBook } from '../support/random-book.js';
import { anyCard } from '../support/random-card.js';
import { airStep } from '../support/joint.js';
import { airOf, inOrder, momentAfter, randomHistory, randomPast, readingAt } from '../support/random-history.js';

const RUNS = { numRuns: 10_000 };
/** Ten thousand histories take a while where many share a processor. */
const PATIENCE = 120_000;
const NEVER = Infinity;
const DUST = 1 / 60_000;

const S1 = cardNamed('S1');
const dueOf = (card: MaterialCard, one: JointHistory): number[] => forecast(card, one).map(({ dueAt }) => dueAt ?? NEVER);
const throughOf = (one: JointHistory): number => forecast(S1, one).find(({ kind }) => kind === 'through')?.progress.due ?? NEVER;
const noneEarlier = (after: readonly number[], before: readonly number[]): boolean => after.every((due, index) => due >= (before[index] ?? NEVER));

const millimetres = fc.integer({ min: 1, max: 120 }).map((tenths) => tenths / 10);
/** Some air whose humidity is always known, so that there is a time. */
const humidPast = randomPast.chain((past) =>
  fc.record({ temperature: fc.integer({ min: 5, max: 35 }), humidity: fc.integer({ min: 10, max: 100 }) }).map(({ temperature, humidity }): JointHistory => ({ ...past.history, air: past.history.air.map((step) => airStep(step.from, step.temperature ?? temperature, step.humidity ?? humidity)) })),
);

describe('a bead that hardens from the air', () => {
  it('is never earlier where it is deeper, and has no time where nobody said how deep it is', () => {
    fc.assert(
      fc.property(humidPast, millimetres, millimetres, (history, depth, more) => {
        expect(throughOf({ ...history, depthMillimetres: depth + more })).toBeGreaterThanOrEqual(throughOf({ ...history, depthMillimetres: depth }));
        expect(throughOf({ ...history, depthMillimetres: null })).toBe(NEVER);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('takes four times as long for twice the depth in air that stays as it is, and never less than the sheet prints for its depth', () => {
    fc.assert(
      fc.property(humidPast, millimetres, (history, depth) => {
        const steady = { ...history, air: history.air.slice(0, 1) };
        const wait = (depthMillimetres: number): number => (throughOf({ ...steady, depthMillimetres }) - history.start) / 60_000;
        const [once, twice] = [wait(depth), wait(2 * depth)];
        if (once !== NEVER) expect(Math.abs(twice - 4 * once)).toBeLessThan(4 * once * 1e-12 + DUST);
        // 24 h for 3 mm, by the square of the depth.
        expect(wait(depth)).toBeGreaterThanOrEqual(1440 * (depth / 3) ** 2 * (1 - 1e-12));
        expect(throughOf({ ...history, depthMillimetres: depth })).toBeGreaterThanOrEqual(plus(history.start, minutes(1440 * (depth / 3) ** 2)) - 1);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('gains and loses nothing by heat on the joint', () => {
    fc.assert(
      fc.property(humidPast, millimetres, (history, depthMillimetres) => {
        const bead = { ...history, depthMillimetres };
        expect(dueOf(S1, { ...bead, heat: [] })).toEqual(dueOf(S1, bead));
      }),
      RUNS,
    );
  }, PATIENCE);

  it('gains nothing by heat that was entered, in a shop with nights, weekends and holidays', () => {
    const airAndDepth = bookWith(fc.constant(S1), (cure) => fc.oneof(airFact, airFact, millimetres.map((depth) => ({ type: 'depth' as const, cure, millimetres: depth })), answerFact(cure)));
    const heated = airAndDepth.chain((book) => fc.tuple(fc.constant(book), fc.array(fc.tuple(momentAfter(book.start), heatFact), { maxLength: 5 })));
    fc.assert(
      fc.property(heated, ([book, heat]) => {
        const facts = [...book.facts, ...heat.map(([at, fact], index) => record(50 + index, at, fact))];
        expect(dueIn(book, facts)).toEqual(dueIn(book, book.facts));
      }),
      RUNS,
    );
  }, PATIENCE);
});

const dueIn = (book: Pick<RandomBook, 'shop'>, facts: readonly FactRecord[]): number[] => outlooks(book, facts).flatMap((one) => one.milestones.map(({ forecast: { dueAt } }) => dueAt ?? NEVER));

describe('drier air', () => {
  it('never makes a milestone of any card earlier', () => {
    fc.assert(
      fc.property(anyCard, randomPast, fc.nat(), fc.integer({ min: 1, max: 100 }), (card, { history, given }, pick, less) => {
        const humid = given.readings.filter((one) => one.humidity !== null);
        const chosen = humid[pick % Math.max(1, humid.length)];
        const readings = given.readings.map((one) => (one === chosen ? { ...one, humidity: Math.max(0, (one.humidity ?? 0) - less) } : one));
        expect(noneEarlier(dueOf(card, { ...history, air: airOf(history.start, { ...given, readings }) }), dueOf(card, history))).toBe(true);
      }),
      RUNS,
    );
  }, PATIENCE);
});

describe('a dwell', () => {
  /** One law of the object's own temperature, which no maximum cuts short. */
  const coat = (temperature: number, length: number, after: number): MaterialCard => ({ ...cardNamed('C1'), maxPanel: null, milestones: [{ kind: 'dwell', laws: [{ law: 'dwell', temperature: celsius(temperature), minutes: minutes(length), after: minutes(after) }] }] });
  const figures = fc.record({ temperature: fc.integer({ min: 10, max: 70 }), length: fc.integer({ min: 1, max: 90 }), after: fc.integer({ min: 0, max: 60 }) });
  const measured = randomHistory.chain((history) => fc.array(readingAt(momentAfter(history.start)), { minLength: 1, maxLength: 4 }).map((more): JointHistory => ({ ...history, heat: inOrder([...history.heat, ...more]) })));

  it('counts nothing before flash-off is over, and is never due before both together', () => {
    fc.assert(
      fc.property(measured, figures, (history, { temperature, length, after }) => {
        const [milestone] = forecast(coat(temperature, length, after), history);
        if (milestone === undefined) throw new Error('no dwell');
        const over = plus(history.start, minutes(after));
        expect(shareAt(milestone.progress, over)).toBe(0);
        if (milestone.dueAt !== null) expect(minutesBetween(history.start, milestone.dueAt)).toBeGreaterThanOrEqual(after + length - DUST);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('is never earlier with a longer flash-off, a longer dwell or a hotter one', () => {
    fc.assert(
      fc.property(measured, figures, figures, (history, one, more) => {
        const due = (sum: typeof one): number => dueOf(coat(sum.temperature, sum.length, sum.after), history)[0] ?? NEVER;
        for (const figure of ['temperature', 'length', 'after'] as const) expect(due({ ...one, [figure]: one[figure] + more[figure] })).toBeGreaterThanOrEqual(due(one));
      }),
      RUNS,
    );
  }, PATIENCE);

  it('has no time while nobody has measured the object', () => {
    fc.assert(
      fc.property(randomHistory, figures, (history, { temperature, length, after }) => {
        const heat = history.heat.filter((event) => event.kind !== 'reading');
        expect(dueOf(coat(temperature, length, after), { ...history, heat })).toEqual([NEVER]);
      }),
      RUNS,
    );
  }, PATIENCE);
});

