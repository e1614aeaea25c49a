import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { append, dueIfHeld, progressLine, shareNow, type TemperaturePoint } from '../../../src/cure/progress-line.js';
import { rateTable } from '../../../src/cure/rate-table.js';
import { celsius, instant, minutes, minutesBetween, plus } from '../../../src/cure/units.js';
import { on, rows, said } from '../../support/joint.js';
import { practiceRows } from '../../support/practice-law.js';

const START = on('08:00');
const LAW_23 = rateTable(practiceRows(23));
const HOUR = 3_600_000;

const point = (minute: number, temperature: number): TemperaturePoint => ({ at: plus(START, minutes(minute)), temperature: celsius(temperature) });

function lineOf(points: readonly TemperaturePoint[], table = LAW_23) {
  const [first, ...rest] = points;
  if (first === undefined) throw new Error('A line needs a point.');
  return progressLine(table, first, rest);
}

/** Steady stretches, one after the other, as points with jumps between. */
function stretches(parts: readonly (readonly [temperature: number, length: number])[]): TemperaturePoint[] {
  let at = 0;
  return parts.flatMap(([temperature, length]) => [point(at, temperature), point((at += length), temperature)]);
}

describe('a line over steady stretches', () => {
  // Law of common practice, no source, 48 h at 23 °C; computed with mpmath 1.3.0.
  it.each([
    ['a broken lamp', [[30, 40], [18, 180], [60, 30]], 0.384297513, 57.86922516, 1773.223163],
    ['night and day', [[16, 720], [23, 480]], 0.2852314399, 67.18034053, 2058.533453],
    ['only the lamp', [[60, 45]], 0.4787797286, 48.98894171, 1501.114382],
  ] as const)('adds up %s', (_name, parts, share, restAt60, restAt23) => {
    const line = lineOf(stretches(parts));
    expect(Math.abs(shareNow(line) - share)).toBeLessThan(1e-8);
    for (const [temperature, rest] of [[60, restAt60], [23, restAt23]] as const) {
      const due = dueIfHeld(line, celsius(temperature));
      expect(Math.abs(minutesBetween(line.last.at, due ?? instant(NaN)) / rest - 1), `${temperature} °C`).toBeLessThan(1e-7);
    }
  });

  it('is due after the minutes of a row', () => {
    const line = lineOf([point(0, 20)], rateTable(rows({ 20: 300, 40: 75 })));
    expect(said(dueIfHeld(line))).toBe('13:00');
    expect(said(dueIfHeld(line, celsius(40)))).toBe('09:15');
    expect(dueIfHeld(line, celsius(19))).toBeNull();
  });
});

describe('a line over a change of temperature', () => {
  // Law of common practice, no source, 48 h at 23 °C; computed with mpmath quad.
  it.each([
    [20, 60, 15, 0.04447917964],
    [60, 20, 30, 0.08895835928],
  ])('from %d to %d °C in %d min earns %d', (from, to, length, expected) => {
    expect(Math.abs(lineOf([point(0, from), point(length, to)]).share - expected)).toBeLessThan(1e-8);
  });

  it('is due at the moment inside it at which the share is full, also when asked later', () => {
    const table = rateTable(rows({ 20: 300, 40: 75, 60: 30 }));
    const line = lineOf([point(0, 20), point(100, 60), point(200, 20), point(900, 20)], table);
    const until = minutesBetween(START, line.due ?? instant(NaN));
    expect(until).toBeGreaterThan(0);
    expect(until).toBeLessThan(100);
    expect(lineOf([point(0, 20), point(until, 20 + 0.4 * until)], table).share).toBeCloseTo(1, 10);
    expect(dueIfHeld(line)).toBe(line.due);
    expect(shareNow(line)).toBe(1);
    expect(line.share).toBeGreaterThan(1);
  });
});

describe('one more point', () => {
  const points = [point(0, 20), point(10, 33.3), point(10, 21), point(60, 21.01), point(61, 55), point(95, 55), point(700, 18), point(3000, 18)];

  it('gives the line that the whole history gives', () => {
    let line = lineOf(points.slice(0, 1));
    for (const [index, one] of points.entries()) {
      if (index > 0) line = append(line, one);
      expect(line).toEqual(lineOf(points.slice(0, index + 1)));
    }
  });

  it('leaves the line before it as it was', () => {
    const before = lineOf(points.slice(0, 3));
    const copy = { ...before };
    append(before, point(90, 60));
    expect(before).toEqual(copy);
  });

  it('may not lie in the past', () => {
    const line = lineOf([point(0, 20), point(10, 20)]);
    expect(() => append(line, point(9, 20))).toThrow(/forward in time/);
    expect(append(line, point(10, 50)).share).toBe(line.share);
  });
});

describe('a line over a history of real air', () => {
  // npm vega-datasets 3.2.1, hourly NOAA normals 1981-2010 of one town; linear between the hours, computed with scipy 1.17.1 quad.
  // The law is that of common practice, no source.
  it.each([
    ['2010-07-15T00:00:00', 72, 23, 0.987652652, null],
    ['2010-04-10T00:00:00', 72, 23, 0.351335735, null],
    ['2010-07-15T00:00:00', 72, 20, 1.35949079, 3339.39776],
    ['2010-08-03T06:00:00', 168, 20, 3.28318984, 3123.40122],
  ])('from %s, %d h, 48 h at %d °C: share %d, ready after %s min', (from, hours, ambient, share, ready) => {
    const points = normals(from, hours);
    const line = lineOf(points, rateTable(practiceRows(ambient)));
    expect(points).toHaveLength(hours + 1);
    expect(Math.abs(line.share / share - 1)).toBeLessThan(1e-6);
    const after = line.due === null ? null : minutesBetween(points[0]?.at ?? START, line.due);
    if (ready === null) expect(after).toBeNull();
    else expect(Math.abs((after ?? NaN) / ready - 1)).toBeLessThan(1e-6);
  });
});

function normals(from: string, hours: number): TemperaturePoint[] {
  const begin = Date.parse(`${from}Z`);
  const lines = readFileSync(new URL('../../data/hourly-normals.csv', import.meta.url), 'utf8').split('\n').filter((line) => /^\d/.test(line));
  const points = lines.map((line) => {
    const [date = '', temperature = ''] = line.split(',');
    return { at: instant(Date.parse(`${date}Z`)), temperature: celsius(Number(temperature)) };
  });
  return points.filter(({ at }) => at >= begin && at <= begin + hours * HOUR);
}
