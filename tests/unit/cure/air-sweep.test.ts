import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airSteps, type AirInput, type AirReading, type AirSide, type AirStep, type OpenPeriod } from '../../../src/cure/air.js';
import { vapourPressure } from '../../../src/cure/dew-point.js';
import { celsius, instant, minus, minutes, plus, type Celsius, type Instant } from '../../../src/cure/units.js';
import { on } from '../../support/joint.js';

const RUNS = { numRuns: 1500 };
const MONDAY = on('00:00');
const hour = minutes(60);
const after = (count: number): Instant => plus(MONDAY, minutes(count));

/** Days of any hours, some left out; now and then a closing meets the opening of the next day. */
const periods: fc.Arbitrary<OpenPeriod[]> = fc
  .array(fc.record({ works: fc.boolean(), opens: fc.constantFrom(0, 30, 450, 700), closes: fc.constantFrom(720, 1020, 1440) }), { minLength: 1, maxLength: 8 })
  .map((days) =>
    days.flatMap(({ works, opens, closes }, day) => (works ? [{ opens: after(day * 1440 + opens), closes: after(day * 1440 + closes), longClosureAfter: days[day + 1]?.works === false }] : [])),
  );
/** On quarters of an hour, so that readings meet each other, the bells and the begin of the joint. */
const moment = fc.integer({ min: -4 * 24, max: 4 * 24 * 8 }).map((quarters) => after(15 * quarters));
const value = fc.integer({ min: 2, max: 30 }).map(celsius);
const reading: fc.Arbitrary<AirReading> = fc.record({ at: moment, value, humidity: fc.option(fc.integer({ min: 0, max: 100 })) });
const input: fc.Arbitrary<AirInput> = fc.record({ start: moment, periods, readings: fc.array(reading, { maxLength: 14 }), usual: fc.option(value), night: fc.option(value), closedDays: fc.option(value) });

/** The rules as they are said, for one moment, with nothing remembered from the moment before. */
function naiveAir(at: Instant, { start, periods, readings, usual, night, closedDays }: AirInput, side: AirSide): Pick<AirStep, 'temperature' | 'source'> {
  const pick = (values: readonly (Celsius | null | undefined)[]): Celsius => celsius((side === 'cold' ? Math.min : Math.max)(...values.filter((one) => one != null)));
  const read = readings.filter((one) => one.at <= at).sort((a, b) => a.at - b.at);
  const last = read.at(-1);
  const previous = last === undefined ? undefined : read.filter((one) => one.at <= last.at - 15 * 60_000).at(-1);
  const fresh = last !== undefined && at < plus(last.at, minutes(180));
  const dayOf = (moment: Instant) => periods.find((one) => minus(one.opens, hour) <= moment && moment < one.closes);
  const today = dayOf(at);
  if (today !== undefined && last !== undefined && last.at >= minus(today.opens, hour)) {
    if (fresh) return { temperature: last.value, source: 'air reading' };
    return { temperature: pick([last.value, previous?.value]), source: 'old air reading' };
  }
  const bells = periods.flatMap((one) => [one.opens, one.closes]).filter((bell) => bell <= at);
  const remembered = last !== undefined && last.at >= Math.max(start, ...bells) - 24 * 3_600_000 ? last.value : null;
  if (today !== undefined && at >= today.opens && start >= minus(today.opens, hour)) {
    return usual === null ? { temperature: null, source: 'unknown air' } : { temperature: pick([usual, remembered]), source: 'usual air' };
  }
  if (side === 'hot') {
    const known = [night, usual, remembered].some((one) => one !== null);
    return { temperature: known ? pick([night, usual, remembered]) : null, source: known ? 'night setting' : 'unknown air' };
  }
  if (night === null) return { temperature: null, source: 'unknown air' };
  const closedBefore = periods.filter((one) => one.closes <= at);
  const coldClosures = closedBefore.filter((one) => one.longClosureAfter).filter((one) => {
    const next = periods.find((other) => other.opens >= one.closes);
    const ended = next !== undefined && (start >= minus(next.opens, hour) || read.some((other) => other.at >= one.closes && dayOf(other.at) !== undefined));
    return !ended || closedBefore.at(-1) === one;
  });
  const long = closedBefore.length === 0 || coldClosures.length > 0;
  const setting = long && closedDays !== null && closedDays <= night ? closedDays : night;
  const atNight = last !== undefined && dayOf(last.at) === undefined && periods.some((one) => one.closes <= last.at);
  return { temperature: atNight ? pick([last.value, setting]) : setting, source: long && closedDays !== null && closedDays <= night ? 'closed days' : 'night setting' };
}

/** What is known of the water: the drier of the readings around, after three hours of the one before as well; colder air may hold less. */
function naiveWater(at: Instant, { readings, start }: AirInput, temperature: Celsius | null): Pick<AirStep, 'humidity' | 'vapour'> {
  const inOrder = [...readings].sort((a, b) => a.at - b.at);
  const read = inOrder.filter((one) => one.at <= at);
  const next = inOrder.find((one) => one.at > at);
  const last = read.at(-1);
  if (last === undefined || last.humidity === null || last.at < start - 180 * 60_000) return { humidity: null, vapour: null };
  const previous = at < plus(last.at, minutes(180)) ? undefined : read.filter((one) => one.at <= last.at - 15 * 60_000).at(-1);
  const counted = [last, previous, next].flatMap((one) => (one === undefined || one.humidity === null ? [] : [{ value: one.value, humidity: one.humidity }]));
  const most = temperature === null ? Infinity : vapourPressure(temperature, 100);
  const vapour = Math.min(most, ...counted.map((one) => vapourPressure(one.value, one.humidity)));
  const dry = counted.map((one) => one.humidity);
  // Warmed air with the same water is drier.
  const warmed = temperature !== null && last.value < temperature;
  return { humidity: warmed ? Math.min((vapourPressure(last.value, last.humidity) / most) * 100, ...dry) : Math.min(...dry), vapour };
}

const at = (steps: readonly AirStep[], moment: Instant): AirStep | undefined => steps.findLast((step) => step.from <= moment);

describe('the sweep over readings and opening hours', () => {
  it.each<AirSide>(['cold', 'hot'])('says at every moment what the rules say for that moment: %s side', (side) => {
    fc.assert(
      fc.property(input, fc.array(moment, { maxLength: 10 }), (given, moments) => {
        const steps = airSteps(given, side);
        const edges = [given.start, ...moments, ...given.periods.flatMap((one) => [one.opens, one.closes, minus(one.opens, hour)]), ...given.readings.flatMap((one) => [one.at, plus(one.at, minutes(180)), plus(one.at, minutes(24 * 60))])];
        for (const asked of edges.flatMap((edge) => [instant(edge - 1), edge, instant(edge + 1)]).filter((edge) => edge >= given.start)) {
          const { temperature, humidity, vapour, source } = at(steps, asked) ?? { temperature: null, humidity: null, vapour: null, source: 'unknown air' };
          expect({ temperature, humidity, vapour, source }).toEqual({ ...naiveAir(asked, given, side), ...naiveWater(asked, given, temperature) });
        }
      }),
      RUNS,
    );
  });

  it('has steps in order from the begin on, each different from the one before', () => {
    fc.assert(
      fc.property(input, (given) => {
        const steps = airSteps(given);
        expect(steps[0]?.from).toBe(given.start);
        for (const [index, step] of steps.entries()) {
          const before = steps[index - 1];
          if (before === undefined) continue;
          expect(step.from).toBeGreaterThan(before.from);
          expect({ ...step, from: 0 }).not.toEqual({ ...before, from: 0 });
        }
      }),
      RUNS,
    );
  });
});

describe('a setting for closed days', () => {
  it('never makes the air warmer that counts for strength, and never touches the air that counts for open time', () => {
    fc.assert(
      fc.property(input, moment, (given, later) => {
        const without = { ...given, closedDays: null };
        expect(airSteps(given, 'hot')).toEqual(airSteps(without, 'hot'));
        const [cold, was] = [given, without].map((one) => at(airSteps(one), later)?.temperature ?? null);
        expect(cold === null).toBe(was === null);
        if (cold != null && was != null) expect(cold).toBeLessThanOrEqual(was);
      }),
      RUNS,
    );
  });
});
