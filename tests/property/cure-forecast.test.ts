import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airSteps, type AirStep } from '../../src/cure/air.js';
import type { MaterialCard } from '../../src/cure/card.js';
import { forecast, milestoneShare } from '../../src/cure/forecast.js';
import type { HeatEvent, JointHistory } from '../../src/cure/history.js';
import { celsius, minutes, minutesBetween, plus, type Celsius, type Instant } from '../../src/cure/units.js';
import { anyCard, randomCard } from '../support/random-card.js';
import { airGiven, airOf, airReadingAt, anyStart, inOrder, lampSetAt, momentAround, PERIODS, randomHistory, readingAt } from '../support/random-history.js';

const RUNS = { numRuns: 10_000 };
/** Ten thousand histories take a while where many share a processor. */
const PATIENCE = 120_000;

const NEVER = Infinity;
const dueOf = (card: MaterialCard, one: JointHistory): number[] => forecast(card, one).map(({ dueAt }) => dueAt ?? NEVER);
const noneEarlier = (later: readonly number[], earlier: readonly number[]): boolean => later.every((due, index) => due >= (earlier[index] ?? NEVER));
/** A past and some moments around its start. */
const withMoments = (count: number): fc.Arbitrary<readonly [JointHistory, readonly Instant[]]> =>
  randomHistory.chain((history) => fc.tuple(fc.constant(history), fc.array(momentAround(history.start), { minLength: count, maxLength: count })));

describe('a strength forecast', () => {
  it('is not changed by seeing a lamp on twice', () => {
    fc.assert(
      fc.property(anyCard, randomHistory, (card, one) => {
        const twice = { ...one, heat: one.heat.flatMap((event): HeatEvent[] => (event.kind === 'lamp-on' ? [event, event] : [event])) };
        expect(dueOf(card, twice)).toEqual(dueOf(card, one));
      }),
      RUNS,
    );
  }, PATIENCE);

  it('is not changed by the last reading once more', () => {
    const heated = randomHistory.chain((one) => {
      const at = momentAround(one.start);
      return fc.record({ one: fc.constant(one), events: fc.array(fc.oneof<fc.Arbitrary<HeatEvent>[]>(readingAt(at), lampSetAt(at)), { maxLength: 6 }), last: readingAt(at) });
    });
    fc.assert(
      fc.property(randomCard, heated, fc.integer({ min: 1, max: 300 }), (card, { one, events, last }, after) => {
        const heat = inOrder<HeatEvent>([...events.filter((event) => event.at < last.at), last]);
        const twice = [...heat, { ...last, at: plus(last.at, minutes(after)) }];
        expect(dueOf(card, { ...one, heat: twice })).toEqual(dueOf(card, { ...one, heat }));
      }),
      RUNS,
    );
  }, PATIENCE);

  // Not of a table: it has no time at all for a start in air that nobody knows.
  it('is never made earlier by a start that is later', () => {
    fc.assert(
      fc.property(anyCard.filter((card) => card.basis !== 'table'), randomHistory, fc.integer({ min: 1, max: 600 }), (card, one, after) => {
        expect(noneEarlier(dueOf(card, { ...one, start: plus(one.start, minutes(after)) }), dueOf(card, one))).toBe(true);
      }),
      RUNS,
    );
  }, PATIENCE);

  // Without a maximum: over it nothing counts, where air counts once the heat is known to be gone.
  it('is never made earlier by a lamp found off', () => {
    fc.assert(
      fc.property(anyCard, withMoments(1), (limited, [one, [at = one.start]]) => {
        const card = { ...limited, maxPanel: null };
        const upTo = one.heat.filter((event) => event.at < at);
        const off = { ...one, heat: [...upTo, { kind: 'lamp-found-off' as const, at }] };
        expect(noneEarlier(dueOf(card, off), dueOf(card, { ...one, heat: upTo }))).toBe(true);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('is never made earlier by a margin, and no wait by rows ends before the margin is waited as well', () => {
    fc.assert(
      fc.property(randomCard, randomHistory, fc.integer({ min: 0, max: 400 }), (card, one, quarters) => {
        const [plain, careful] = [{ ...card, marginPercent: 0 }, { ...card, marginPercent: quarters / 4 }];
        expect(noneEarlier(dueOf(careful, one), dueOf(plain, one))).toBe(true);
        for (const [index, { dueAt }] of forecast(careful, one).entries()) {
          const law = card.milestones[index]?.laws[0];
          if (dueAt === null || law?.law !== 'credit') continue;
          const shortest = Math.min(...law.rows.map((row) => row.minutes));
          expect(minutesBetween(one.start, dueAt)).toBeGreaterThanOrEqual(shortest * (1 + quarters / 400) - 1e-3);
        }
      }),
      RUNS,
    );
  }, PATIENCE);

  it('has a share from 0 to 1 that never falls', () => {
    fc.assert(
      fc.property(anyCard, withMoments(1), fc.integer({ min: 0, max: 3000 }), (card, [one, [at = one.start]], after) => {
        for (const milestone of forecast(card, one)) {
          const [before, then] = [milestoneShare(milestone, at), milestoneShare(milestone, plus(at, minutes(after)))];
          expect([before >= 0, then >= before, then <= 1]).toEqual([true, true, true]);
        }
      }),
      RUNS,
    );
  }, PATIENCE);
});

const temperatureAt = (air: readonly AirStep[], at: Instant): Celsius | null => air.findLast((step) => step.from <= at)?.temperature ?? null;

describe('the air', () => {
  const withAir = anyStart.chain((start) => fc.record({ start: fc.constant(start), given: airGiven(start), one: airReadingAt(momentAround(start)), moments: fc.array(momentAround(start), { minLength: 3, maxLength: 12 }) }));

  it('is never made warmer for strength by the same reading once more within its three hours, when it is the only one', () => {
    fc.assert(
      fc.property(withAir, fc.integer({ min: 1, max: 179 }), ({ start, given, one, moments }, after) => {
        const again = { ...one, at: plus(one.at, minutes(after)) };
        const [was, is] = [airOf(start, { ...given, readings: [one] }), airOf(start, { ...given, readings: [one, again] })];
        // Across opening time the second reading is the day's own and may say more than the night setting.
        if (!PERIODS.some((period) => period.opens - 3_600_000 <= one.at && again.at < period.closes)) return;
        expect(moments.map((at) => temperatureAt(is, at))).toEqual(moments.map((at) => temperatureAt(was, at)));
      }),
      RUNS,
    );
  }, PATIENCE);

  it('counts for no more than it was just read', () => {
    fc.assert(
      fc.property(withAir, ({ start, given }) => {
        const air = airOf(start, given);
        for (const { at, value } of given.readings.filter((one) => one.at >= start)) expect(temperatureAt(air, at) ?? celsius(-NEVER)).toBeLessThanOrEqual(value);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('is never warmer on the cold side than on the hot side', () => {
    fc.assert(
      fc.property(withAir, ({ start, given, moments }) => {
        const [cold, hot] = [airOf(start, given), airSteps({ start, periods: PERIODS, ...given }, 'hot')];
        for (const at of moments) expect(temperatureAt(cold, at) ?? -NEVER).toBeLessThanOrEqual(temperatureAt(hot, at) ?? -NEVER);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('does not depend on the order in which readings were entered', () => {
    fc.assert(
      fc.property(withAir, ({ start, given }) => {
        expect(airOf(start, { ...given, readings: [...given.readings].reverse() })).toEqual(airOf(start, given));
      }),
      RUNS,
    );
  }, PATIENCE);
});
