import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AirReading } from '../../src/cure/air.js';
import { airSteps } from '../../src/cure/air.js';
import type { MaterialCard } from '../../src/cure/card.js';
import { forecast, milestoneShare } from '../../src/cure/forecast.js';
import type { HeatEvent, JointHistory, JointStep } from '../../src/cure/history.js';
import { jointSteps } from '../../src/cure/joint-temperature.js';
import { openLimit } from '../../src/cure/open-limit.js';
import { minutesAt } from '../../src/cure/rows.js';
import { celsius, instant, minutes, minutesBetween, plus, type Celsius, type Instant } from '../../src/cure/units.js';
import { cardNamed } from '../support/card-shelf.js';
import { on } from '../support/joint.js';

const RUNS = { numRuns: 1000 };
const START = on('08:00');
const PERIODS = ['Mon', 'Tue', 'Wed'].map((day) => ({ opens: on(`${day} 07:30`), closes: on(`${day} 17:00`) }));
/** P1 without its maximum, so that a hotter reading is only hotter. */
const P1: MaterialCard = { ...cardNamed('P1'), maxPanel: null };
const HANDLING = P1.milestones.flatMap((rule) => (rule.kind === 'handling' ? rule.laws : [])).flatMap((law) => (law.law === 'credit' ? [law.rows] : []))[0] ?? [];

const moment = fc.integer({ min: 0, max: 36 * 60 }).map((after) => plus(START, minutes(after)));
const temperature = fc.integer({ min: 50, max: 700 }).map((tenths) => celsius(tenths / 10));

const reading = fc.record({ kind: fc.constant('reading' as const), at: moment, value: temperature });
const heatEvent: fc.Arbitrary<HeatEvent> = fc.oneof(
  { weight: 4, arbitrary: reading },
  fc.record({ kind: fc.constant('lamp-set' as const), at: moment, setting: fc.constantFrom(30, 35, 55, 60).map(celsius) }),
  fc.record({ kind: fc.constantFrom('lamp-on' as const, 'lamp-off' as const, 'lamp-found-off' as const, 'closing' as const), at: moment }),
);
const heat = fc.array(heatEvent, { maxLength: 8 }).map((events) => [...events].sort((a, b) => a.at - b.at));
const airReading: fc.Arbitrary<AirReading> = fc.record({ at: moment, value: fc.integer({ min: 5, max: 35 }).map(celsius), humidity: fc.option(fc.integer({ min: 0, max: 100 })) });
const airInput = fc.record({ readings: fc.array(airReading, { maxLength: 4 }), usual: fc.constantFrom(null, celsius(20)), night: fc.constantFrom(null, celsius(12), celsius(20)) });

const airOf = (given: { readonly readings: readonly AirReading[]; readonly usual: Celsius | null; readonly night: Celsius | null }) => airSteps({ start: START, periods: PERIODS, ...given });
const history = fc.record({ start: fc.constant(START), heat, air: airInput.map(airOf) }) satisfies fc.Arbitrary<JointHistory>;

const NEVER = Infinity;
const dueOf = (card: MaterialCard, one: JointHistory) => forecast(card, one).map(({ dueAt }) => dueAt ?? NEVER);
const noneEarlier = (later: readonly number[], earlier: readonly number[]): boolean => later.every((due, index) => due >= (earlier[index] ?? NEVER));

describe('a strength forecast', () => {
  it('is not changed by seeing a lamp on twice', () => {
    for (const name of ['P1', 'P2', 'K', 'F1']) {
      fc.assert(
        fc.property(history, (one) => {
          const twice = { ...one, heat: one.heat.flatMap((event): HeatEvent[] => (event.kind === 'lamp-on' ? [event, event] : [event])) };
          expect(dueOf(cardNamed(name), twice)).toEqual(dueOf(cardNamed(name), one));
        }),
        { numRuns: 300 },
      );
    }
  });

  it('is not changed by the last reading once more', () => {
    const warm = fc.array(fc.oneof(reading, fc.record({ kind: fc.constant('lamp-set' as const), at: moment, setting: temperature })), { maxLength: 6 });
    fc.assert(
      fc.property(history, warm, reading, fc.integer({ min: 0, max: 300 }), (one, events, last, after) => {
        const heat: HeatEvent[] = [...events.filter((event) => event.at <= last.at).sort((a, b) => a.at - b.at), last];
        const twice = [...heat, { ...last, at: plus(last.at, minutes(after)) }];
        expect(dueOf(P1, { ...one, heat: twice })).toEqual(dueOf(P1, { ...one, heat }));
      }),
      RUNS,
    );
  });

  // Whether heat is believed to be back is told from the reading before, so a doubt in between is left out here.
  it('is never made earlier by a colder reading', () => {
    const sure = history.map((one) => ({ ...one, heat: one.heat.filter((event) => event.kind !== 'lamp-found-off' && event.kind !== 'closing') }));
    fc.assert(
      fc.property(sure, fc.nat(), fc.integer({ min: 1, max: 300 }), (one, pick, tenths) => {
        const readings = one.heat.filter((event) => event.kind === 'reading');
        const chosen = readings[pick % Math.max(1, readings.length)];
        const colder = { ...one, heat: one.heat.map((event) => (event === chosen ? { ...chosen, value: celsius(chosen.value - tenths / 10) } : event)) };
        expect(noneEarlier(dueOf(P1, colder), dueOf(P1, one))).toBe(true);
      }),
      RUNS,
    );
  });

  it('is never made earlier by a start that is later', () => {
    for (const name of ['P1', 'P2', 'F1', 'W1', 'S1', 'E1']) {
      fc.assert(
        fc.property(history, fc.integer({ min: 1, max: 600 }), (one, after) => {
          expect(noneEarlier(dueOf(cardNamed(name), { ...one, start: plus(START, minutes(after)) }), dueOf(cardNamed(name), one))).toBe(true);
        }),
        { numRuns: 300 },
      );
    }
  });

  it('is never made earlier by a lamp found off', () => {
    for (const name of ['P1', 'P2', 'K']) {
      fc.assert(
        fc.property(history, moment, (one, at) => {
          const upTo = one.heat.filter((event) => event.at <= at);
          const off = { ...one, heat: [...upTo, { kind: 'lamp-found-off' as const, at }] };
          expect(noneEarlier(dueOf(cardNamed(name), off), dueOf(cardNamed(name), { ...one, heat: upTo }))).toBe(true);
        }),
        { numRuns: 400 },
      );
    }
  });

  it('is never early: whoever is at least as warm as counted has earned the whole wait by then', () => {
    const warmer = fc.array(fc.integer({ min: 0, max: 200 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(history, warmer, (one, surplus) => {
        const [due] = dueOf(P1, one);
        if (due === undefined || due === NEVER) return;
        const path = jointSteps(one, P1.maxPanel).map((step, index) => ({ ...step, temperature: step.temperature === null ? null : celsius(step.temperature + (surplus[index % surplus.length] ?? 0) / 10) }));
        // Rounding dust of 1 ms is allowed, and no more.
        expect(earned(path, instant(due))).toBeGreaterThanOrEqual(1 - 1 / 60_000 / 25);
      }),
      RUNS,
    );
  });

  it('has a share from 0 to 1 that never falls', () => {
    for (const name of ['P1', 'P2', 'K', 'G1', 'S1', 'C1', 'W1']) {
      fc.assert(
        fc.property(history, moment, fc.integer({ min: 0, max: 3000 }), (one, at, after) => {
          for (const milestone of forecast(cardNamed(name), one)) {
            const [before, then] = [milestoneShare(milestone, at), milestoneShare(milestone, plus(at, minutes(after)))];
            expect(before).toBeGreaterThanOrEqual(0);
            expect(then).toBeGreaterThanOrEqual(before);
            expect(then).toBeLessThanOrEqual(1);
          }
        }),
        { numRuns: 200 },
      );
    }
  });
});

/** What a joint with these temperatures has earned, minute by minute of each step. */
function earned(path: readonly JointStep[], due: Instant): number {
  return path.reduce((sum, step, index) => {
    const end = Math.min(path[index + 1]?.from ?? due, due);
    const whole = step.temperature === null ? null : minutesAt(HANDLING, step.temperature);
    return whole === null || end <= step.from ? sum : sum + minutesBetween(step.from, instant(end)) / whole;
  }, 0);
}

describe('the air', () => {
  it('is never made warmer for strength by the same reading once more within its three hours, when it is the only one', () => {
    fc.assert(
      fc.property(airInput, airReading, fc.integer({ min: 1, max: 179 }), fc.array(moment, { maxLength: 20 }), (given, one, after, moments) => {
        const again = { ...one, at: plus(one.at, minutes(after)) };
        const [steps, more] = [airOf({ ...given, readings: [one] }), airOf({ ...given, readings: [one, again] })];
        for (const at of moments) {
          const [was, is] = [steps, more].map((air) => air.filter((step) => step.from <= at).at(-1)?.temperature ?? null);
          // Across opening time the second reading is the day's own and may say more than the night setting.
          if (is != null && PERIODS.some((period) => period.opens - 3_600_000 <= one.at && again.at < period.closes)) expect(was).toBe(is);
        }
      }),
      RUNS,
    );
  });

  it('is never warmer on the cold side than on the hot side', () => {
    fc.assert(
      fc.property(airInput, moment, (given, at) => {
        const [cold, hot] = (['cold', 'hot'] as const).map((side) => airSteps({ start: START, periods: PERIODS, ...given }, side).filter((step) => step.from <= at).at(-1)?.temperature ?? null);
        if (cold != null && hot != null) expect(cold).toBeLessThanOrEqual(hot);
        if (hot == null) expect(cold).toBeNull();
      }),
      RUNS,
    );
  });

  it('does not depend on the order in which readings were entered', () => {
    fc.assert(
      fc.property(airInput, (given) => {
        fc.pre(new Set(given.readings.map((one) => one.at)).size === given.readings.length);
        expect(airOf({ ...given, readings: [...given.readings].reverse() })).toEqual(airOf(given));
      }),
      RUNS,
    );
  });
});

describe('the open limit', () => {
  it('is never made later by any hotter temperature', () => {
    const known = fc.array(fc.record({ at: fc.integer({ min: 0, max: 90 }), value: fc.integer({ min: 5, max: 35 }) }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(known, fc.nat(), fc.integer({ min: 1, max: 20 }), (temperatures, pick, more) => {
        const limit = (list: typeof temperatures): number => {
          const open = openLimit(P1, { pasted: START, until: null, readings: [], air: list.map(({ at, value }) => ({ from: plus(START, minutes(at)), temperature: celsius(value), humidity: null, source: 'air reading' })) });
          return open.kind === 'none' ? NEVER : open.at;
        };
        const hotter = temperatures.map((one, index) => (index === pick % temperatures.length ? { ...one, value: one.value + more } : one));
        expect(limit(hotter)).toBeLessThanOrEqual(limit(temperatures));
      }),
      RUNS,
    );
  });
});
