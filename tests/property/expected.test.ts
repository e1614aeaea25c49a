import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SheetRow } from '../../src/cure/card.js';
import { earnedOn, expectedProgress, expectedShareAt, expectedTemperatureAt } from '../../src/cure/expected.js';
import { temperatureOn, type CourseStretch } from '../../src/cure/expected-stretches.js';
import { HEATERS, type HeatEvent, type JointHistory } from '../../src/cure/history.js';
import { jointSteps } from '../../src/cure/joint-temperature.js';
import { beginLines, dueIfHeld, dueOf, shareOf } from '../../src/cure/progress-lines.js';
import { progressOf, shareAt } from '../../src/cure/progress.js';
import { gridOf } from '../../src/cure/rate-grid.js';
import { meanRate, rateTable } from '../../src/cure/rate-table.js';
import { minutesAt } from '../../src/cure/rows.js';
import type { TemperaturePoint } from '../../src/cure/temperature-point.js';
import { celsius, instant, minutes, minutesBetween, plus } from '../../src/cure/units.js';
import { BUILD_UPS, warmUpEarned } from '../../src/cure/warm-up.js';
import { passes, solvedShare } from '../support/expected-oracle.js';
import { on } from '../support/joint.js';
import { append, lineAlong } from '../support/lines-along.js';

const START = on('08:00');

/** One to five rows, hotter always faster, as steep or flat as sheets get. */
const sheet: fc.Arbitrary<SheetRow[]> = fc
  .record({ coldest: fc.double({ min: 5, max: 25, noNaN: true }), longest: fc.double({ min: 60, max: 20_000, noNaN: true }), steps: fc.array(fc.record({ gap: fc.double({ min: 0.5, max: 25, noNaN: true }), slope: fc.double({ min: 0.01, max: 0.2, noNaN: true }) }), { maxLength: 4 }) })
  .map(({ coldest, longest, steps }) => {
    const rows = [{ temperature: celsius(coldest), minutes: minutes(longest) }];
    let [temperature, wait] = [coldest, longest];
    for (const { gap, slope } of steps) {
      temperature += gap;
      wait *= Math.exp(-gap * slope);
      // No sheet prints less than half a minute.
      if (wait < 0.5) break;
      rows.push({ temperature: celsius(temperature), minutes: minutes(wait) });
    }
    return rows;
  });

const temperature = fc.double({ min: -5, max: 90, noNaN: true }).map(celsius);
const length = fc.oneof(fc.integer({ min: 0, max: 300 }), fc.double({ min: 0.01, max: 300, noNaN: true }));
const points = fc.array(fc.record({ length, temperature }), { minLength: 2, maxLength: 12 }).map((parts) => {
  let at = START;
  return parts.map((part): TemperaturePoint => ({ at: (at = plus(at, minutes(part.length))), temperature: part.temperature }));
});

const lineOf = (rows: readonly SheetRow[], history: readonly TemperaturePoint[]) => lineAlong(rateTable(rows), history);
const shareAlong = (rows: readonly SheetRow[], history: readonly TemperaturePoint[]): number => shareOf(lineOf(rows, history));

function solvedLine(rows: readonly SheetRow[], history: readonly TemperaturePoint[]): number {
  return history.slice(1).reduce((sum, to, index) => {
    const from = history[index] ?? to;
    const minutesLong = minutesBetween(from.at, to.at);
    const course = (minute: number): number => from.temperature + ((to.temperature - from.temperature) * minute) / minutesLong;
    return sum + solvedShare(rows, course, minutesLong, passes(rows, from.temperature, to.temperature, minutesLong));
  }, 0);
}

const moment = fc.integer({ min: -60, max: 36 * 60 }).map((after) => plus(START, minutes(after)));
const heatEvent: fc.Arbitrary<HeatEvent> = fc.oneof(
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('reading' as const), at: moment, value: fc.integer({ min: 50, max: 700 }).map((tenths) => celsius(tenths / 10)) }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('lamp-set' as const), at: moment, setting: fc.constantFrom(30, 35, 55, 60).map(celsius), heater: fc.constantFrom(...HEATERS) }) },
  fc.record({ kind: fc.constantFrom('lamp-on' as const, 'lamp-off' as const, 'lamp-found-off' as const, 'closing' as const), at: moment }),
);
const air = fc.array(fc.record({ from: moment, temperature: fc.option(fc.integer({ min: 5, max: 29 }).map(celsius)) }), { maxLength: 4 }).map((steps) => [{ from: plus(START, minutes(-60)), temperature: celsius(20) }, ...steps.sort((one, other) => one.from - other.from)].map((step) => ({ ...step, humidity: null, vapour: null, source: 'air reading' as const })));
const history: fc.Arbitrary<JointHistory> = fc.record({ start: fc.constant(START), heat: fc.array(heatEvent, { maxLength: 8 }).map((events) => [...events].sort((one, other) => one.at - other.at)), air, depthMillimetres: fc.constant(null) });
const buildUp = fc.constantFrom(...BUILD_UPS);
const END = plus(START, minutes(48 * 60));

describe('a line over a random history', () => {
  it('earns what the solver finds', () => {
    fc.assert(
      fc.property(sheet, points, (rows, given) => {
        const solved = solvedLine(rows, given);
        expect(Math.abs(shareAlong(rows, given) - solved)).toBeLessThanOrEqual(1e-6 * solved);
      }),
      { numRuns: 400 },
    );
  });

  it('is not changed by a point on a stretch', () => {
    fc.assert(
      fc.property(sheet, points, fc.double({ min: 0, max: 1, noNaN: true }), fc.nat(), (rows, given, part, pick) => {
        const index = 1 + (pick % (given.length - 1));
        const [from, to] = [given[index - 1], given[index]];
        if (from === undefined || to === undefined) return;
        // Instants have steps: the temperature is that of the moment as it can be written.
        const at = instant(from.at + (to.at - from.at) * part);
        const reached = to.at === from.at ? 0 : (at - from.at) / (to.at - from.at);
        const between = { at, temperature: celsius(from.temperature + (to.temperature - from.temperature) * reached) };
        const whole = shareAlong(rows, given);
        const split = shareAlong(rows, [...given.slice(0, index), between, ...given.slice(index)]);
        expect(Math.abs(split - whole)).toBeLessThanOrEqual(1e-12 * Math.max(1, whole));
      }),
      { numRuns: 10_000 },
    );
  });

  it('grows point by point into the same line, and is due where the share is full', () => {
    fc.assert(
      fc.property(sheet, points, (rows, given) => {
        const [first, ...rest] = given;
        if (first === undefined) return;
        const line = rest.reduce(append, beginLines(gridOf(rateTable(rows)), first));
        expect(line).toEqual(lineOf(rows, given));
        const due = dueOf(line);
        if (due === Infinity) return;
        const index = given.findIndex((point) => point.at >= due);
        const [from, to] = [given[index - 1], given[index]];
        if (from === undefined || to === undefined) throw new Error('due outside the history');
        const part = (due - from.at) / (to.at - from.at);
        const until = shareAlong(rows, [...given.slice(0, index), { at: due, temperature: celsius(from.temperature + (to.temperature - from.temperature) * part) }]);
        // A due moment is known to a part of a microsecond.
        expect(Math.abs(until - 1)).toBeLessThan(1e-7);
        expect(dueIfHeld(append(line, { at: END, temperature: celsius(-40) }))).toBe(due);
      }),
      { numRuns: 3000 },
    );
  });
});

describe('what a stretch earns', () => {
  it('is more where the whole stretch is warmer', () => {
    fc.assert(
      fc.property(sheet, temperature, temperature, fc.double({ min: 0, max: 10, noNaN: true }), (rows, from, to, more) => {
        const table = rateTable(rows);
        const [one, other] = [meanRate(table, from, to), meanRate(table, celsius(from + more), celsius(to + more))];
        expect(other).toBeGreaterThanOrEqual(one * (1 - 1e-9));
      }),
      { numRuns: 10_000 },
    );
  });

  it('is the sum of its parts, also while warming up', () => {
    const warmUp = fc.record({ from: temperature, towards: temperature, timeConstant: fc.double({ min: 1, max: 60, noNaN: true }).map(minutes) });
    fc.assert(
      fc.property(sheet, warmUp, length, length, (rows, course, first, second) => {
        const table = rateTable(rows);
        const goesOn = { ...course, from: temperatureOn({ course: 'warm-up', warmUp: course }, minutes(first)) ?? course.from };
        // A joint that counts as arrived does so some time after either switch-on; that is the difference.
        const parts = warmUpEarned(table, course, minutes(first)) + warmUpEarned(table, goesOn, minutes(second));
        const whole = warmUpEarned(table, course, minutes(first + second));
        if (rows.some((row) => Math.abs(row.temperature - course.towards) < 1e-6)) return;
        expect(Math.abs(parts - whole)).toBeLessThanOrEqual(1e-9 * whole + 1e-12);
      }),
      { numRuns: 3000 },
    );
  });
});

describe('the expected side of a random joint', () => {
  it('has no gaps and earns what the solver finds along its own temperatures', () => {
    fc.assert(
      fc.property(sheet, history, buildUp, (rows, joint, kind) => {
        const progress = expectedProgress(rows, joint, kind);
        expect(progress.stretches.map((stretch) => stretch.from)).toEqual([START, ...progress.stretches.slice(0, -1).map((stretch) => stretch.to)]);
        const solved = progress.stretches.reduce((sum, stretch) => sum + solvedStretch(rows, stretch), 0);
        const last = progress.stretches.at(-1);
        const ours = last === undefined ? 0 : progress.earned + earnedOn(progress.table, last.course, minutesBetween(last.from, capped(last)));
        expect(Math.abs(ours - solved)).toBeLessThanOrEqual(1e-6 * solved + 1e-12);
      }),
      { numRuns: 300 },
    );
  });

  it('is full at its due moment, and never before, whatever the highest temperature that counts', () => {
    fc.assert(
      fc.property(sheet, history, buildUp, fc.option(temperature), (rows, joint, kind, maximum) => {
        const progress = expectedProgress(rows, joint, kind, maximum);
        if (progress.due === null) expect(expectedShareAt(progress, plus(END, minutes(100_000)))).toBeLessThan(1);
        else {
          expect(expectedShareAt(progress, progress.due)).toBeCloseTo(1, 7);
          expect(expectedShareAt(progress, plus(progress.due, minutes(-1)))).toBeLessThanOrEqual(1 + 1e-9);
        }
      }),
      { numRuns: 5000 },
    );
  });

  it('earns no more with a highest temperature that counts', () => {
    fc.assert(
      fc.property(sheet, history, buildUp, temperature, moment, (rows, joint, kind, maximum, at) => {
        expect(expectedShareAt(expectedProgress(rows, joint, kind, maximum), at)).toBeLessThanOrEqual(expectedShareAt(expectedProgress(rows, joint, kind), at) + 1e-9);
      }),
      { numRuns: 2000 },
    );
  });

  it('is never behind the safe side while the air does not change', () => {
    fc.assert(
      fc.property(sheet, history, buildUp, moment, (rows, varied, kind, at) => {
        const joint = { ...varied, air: varied.air.slice(-1).map((step) => ({ ...step, from: plus(START, minutes(-60)) })) };
        const steps = jointSteps(joint, null);
        const pieces = steps.map((step, index) => ({ from: step.from, to: steps[index + 1]?.from ?? null, temperature: step.temperature, source: step.source, wholeMinutes: step.temperature === null ? null : minutesAt(rows, step.temperature) }));
        const sure = progressOf('credit', pieces);
        const progress = expectedProgress(rows, joint, kind);
        expect(expectedShareAt(progress, at)).toBeGreaterThanOrEqual(shareAt(sure, at) - 1e-9);
        if (sure.due !== null) expect(progress.due ?? Infinity).toBeLessThanOrEqual(sure.due + 1);
      }),
      { numRuns: 10_000 },
    );
  });

  it('stays between the coldest and the hottest that was read, set or in the air', () => {
    fc.assert(
      fc.property(sheet, history, buildUp, moment, (rows, joint, kind, at) => {
        const here = expectedTemperatureAt(expectedProgress(rows, joint, kind), at);
        if (here === null) return;
        const seen = [...joint.air.map((step) => step.temperature ?? 20), ...joint.heat.map((event) => (event.kind === 'reading' ? event.value : event.kind === 'lamp-set' ? event.setting : 20))];
        expect(here).toBeGreaterThanOrEqual(Math.min(...seen) - 1e-6);
        expect(here).toBeLessThanOrEqual(Math.max(...seen) + 1e-6);
      }),
      { numRuns: 5000 },
    );
  });
});

const capped = (stretch: CourseStretch) => stretch.to ?? plus(stretch.from, minutes(10));

function solvedStretch(rows: readonly SheetRow[], stretch: CourseStretch): number {
  const { course } = stretch;
  const long = minutesBetween(stretch.from, capped(stretch));
  if (course.course === 'unknown') return 0;
  const at = (minute: number): number => temperatureOn(course, minutes(minute)) ?? NaN;
  return solvedShare(rows, at, long, kinksOf(rows, stretch, long));
}

function kinksOf(rows: readonly SheetRow[], { course }: CourseStretch, long: number): number[] {
  if (course.course === 'ramp') return passes(rows, course.from, course.to, long);
  if (course.course !== 'warm-up') return [];
  const { from, towards, timeConstant } = course.warmUp;
  const passed = rows.map((row) => timeConstant * Math.log((towards - from) / (towards - row.temperature)));
  return [...passed.filter(Number.isFinite), timeConstant, 3 * timeConstant, 8 * timeConstant, 25 * timeConstant];
}
