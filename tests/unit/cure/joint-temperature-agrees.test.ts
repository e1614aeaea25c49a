import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AirStep } from '../../../src/cure/air.js';
import { HEATERS, type HeatEvent, type JointHistory } from '../../../src/cure/history.js';
import { jointSteps } from '../../../src/cure/joint-temperature.js';
import { lampStretches } from '../../../src/cure/lamp-stretches.js';
import { celsius, minutes, plus, type Instant } from '../../../src/cure/units.js';
import { on } from '../../support/joint.js';
import { naiveJointSteps } from '../../support/naive-joint-steps.js';
import { naiveLampStretches } from '../../support/naive-lamp-stretches.js';

const START = on('08:00');
const RUNS = 12_000;

// Few different minutes and degrees, so that events coincide and readings repeat.
const moment = fc.oneof(fc.integer({ min: -12, max: 40 }).map((steps) => steps * 5), fc.integer({ min: -60, max: 36 * 60 })).map((after): Instant => plus(START, minutes(after)));
const degrees = fc.oneof(fc.integer({ min: 14, max: 40 }), fc.integer({ min: 0, max: 95 })).map(celsius);
const event: fc.Arbitrary<HeatEvent> = fc.oneof(
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('reading' as const), at: moment, value: degrees }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('lamp-set' as const), at: moment, setting: fc.constantFrom(30, 35, 60).map(celsius), heater: fc.constantFrom(...HEATERS) }) },
  { weight: 4, arbitrary: fc.record({ kind: fc.constantFrom('lamp-on' as const, 'lamp-off' as const, 'lamp-found-off' as const, 'closing' as const), at: moment }) },
);
const step: fc.Arbitrary<AirStep> = fc.record({
  from: moment,
  temperature: fc.option(fc.integer({ min: 5, max: 29 }).map(celsius)),
  humidity: fc.constant(null),
  vapour: fc.constant(null),
  source: fc.constantFrom('air reading' as const, 'old air reading' as const, 'night setting' as const, 'unknown air' as const),
});
const heat = fc.array(event, { maxLength: 30, size: 'max' }).map((events) => events.sort((one, other) => one.at - other.at));
const history: fc.Arbitrary<JointHistory> = fc.record({
  start: fc.constant(START),
  heat,
  air: fc.array(step, { maxLength: 8 }).map((steps) => steps.sort((one, other) => one.from - other.from)),
  depthMillimetres: fc.constant(null),
});
const maximum = fc.option(fc.constantFrom(20, 35, 60, 85).map(celsius));

describe('one sweep over a random history', () => {
  it('finds what going over everything at every edge finds', () => {
    fc.assert(
      fc.property(history, maximum, fc.constantFrom('colder' as const, 'previous' as const), (one, most, between) => {
        expect(jointSteps(one, most, between)).toEqual(naiveJointSteps(one, most, between));
      }),
      { numRuns: RUNS },
    );
  });

  it('finds when the lamp was on', () => {
    fc.assert(
      fc.property(heat, (events) => {
        expect(lampStretches(events)).toEqual(naiveLampStretches(events));
      }),
      { numRuns: RUNS },
    );
  });

  it('takes a lamp that is found off again and again for what it is', () => {
    const events: HeatEvent[] = [{ kind: 'reading', at: START, value: celsius(40) }];
    for (let minute = 1; minute < 400; minute += 2) {
      events.push({ kind: 'lamp-found-off', at: plus(START, minutes(minute)) }, { kind: 'reading', at: plus(START, minutes(minute + 1)), value: celsius(15 + ((minute * 7) % 11)) });
    }
    const one: JointHistory = { start: START, heat: events, air: [{ from: START, temperature: celsius(29), humidity: null, vapour: null, source: 'air reading' }], depthMillimetres: null };
    expect(jointSteps(one, null)).toEqual(naiveJointSteps(one, null));
  });

  it('takes a joint that is read every second for a day', () => {
    const events = Array.from({ length: 86_400 }, (_, second): HeatEvent => ({ kind: 'reading', at: plus(START, minutes(second / 60)), value: celsius(20 + second / 10_000) }));
    const one: JointHistory = { start: START, heat: events, air: [], depthMillimetres: null };
    // Going over everything for each of them would take minutes.
    expect(jointSteps(one, null)).toHaveLength(86_400);
  });
});
