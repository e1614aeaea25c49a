import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { dueIfHeld, dueOf, lastPoint, shareOf } from '../../../src/cure/progress-lines.js';
import { rateTable } from '../../../src/cure/rate-table.js';
import type { TemperaturePoint } from '../../../src/cure/temperature-point.js';
import { celsius, instant, minutes, minutesBetween, plus } from '../../../src/cure/units.js';
import { on, rows, said } from '../../support/joint.js';
import { append, lineAlong } from '../../support/lines-along.js';
import { practiceRows } from '../../support/practice-law.js';

const START = on('08:00');
const LAW_23 = rateTable(practiceRows(23));
const HOUR = 3_600_000;

const point = (minute: number, temperature: number): TemperaturePoint => ({ at: plus(START, minutes(minute)), temperature: celsius(temperature) });

const lineOf = (points: readonly TemperaturePoint[], table = LAW_23) => lineAlong(table, points);

/** When a line is due if the joint jumps to a temperature and stays there; null: never. */
function dueAt(points: readonly TemperaturePoint[], temperature: number, table = LAW_23) {
  const { at } = points.at(-1) ?? point(0, temperature);
  const due = dueIfHeld(lineOf([...points, { at, temperature: celsius(temperature) }], table));
  return due < Infinity ? due : null;
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
    const points = stretches(parts);
    const line = lineOf(points);
    expect(Math.abs(shareOf(line) - share)).toBeLessThan(1e-8);
    for (const [temperature, rest] of [[60, restAt60], [23, restAt23]] as const) {
      const due = dueAt(points, temperature);
      expect(Math.abs(minutesBetween(lastPoint(line).at, due ?? instant(NaN)) / rest - 1), `${temperature} °C`).toBeLessThan(1e-7);
    }
  });

  it('is due after the minutes of a row', () => {
    const table = rateTable(rows({ 20: 300, 40: 75 }));
    const points = [point(0, 20)];
    expect(said(dueIfHeld(lineOf(points, table)))).toBe('13:00');
    expect(said(dueAt(points, 40, table))).toBe('09:15');
    expect(dueAt(points, 19, table)).toBeNull();
  });
});

describe('a line over a change of temperature', () => {
  // Law of common practice, no source, 48 h at 23 °C; computed with mpmath quad.
  it.each([
    [20, 60, 15, 0.04447917964],
    [60, 20, 30, 0.08895835928],
  ])('from %d to %d °C in %d min earns %d', (from, to, length, expected) => {
    expect(Math.abs(shareOf(lineOf([point(0, from), point(length, to)])) - expected)).toBeLessThan(1e-8);
  });

  it('is due at the moment inside it at which the share is full, also when asked later', () => {
    const table = rateTable(rows({ 20: 300, 40: 75, 60: 30 }));
    const line = lineOf([point(0, 20), point(100, 60), point(200, 20), point(900, 20)], table);
    const until = minutesBetween(START, dueOf(line));
    expect(until).toBeGreaterThan(0);
    expect(until).toBeLessThan(100);
    expect(shareOf(lineOf([point(0, 20), point(until, 20 + 0.4 * until)], table))).toBeCloseTo(1, 10);
    expect(dueIfHeld(line)).toBe(dueOf(line));
    expect(shareOf(line)).toBeGreaterThan(1);
  });
});

describe('one more point', () => {
  const points = [point(0, 20), point(10, 33.3), point(10, 21), point(60, 21.01), point(61, 55), point(95, 55), point(700, 18), point(3000, 18)];

  it('gives the line that the whole history gives', () => {
    const line = lineOf(points.slice(0, 1));
    for (const [index, one] of points.entries()) {
      if (index > 0) append(line, one);
      expect(line).toEqual(lineOf(points.slice(0, index + 1)));
    }
  });

  it('leaves other lines of the same table as they were', () => {
    const [one, other] = [lineOf(points.slice(0, 3)), lineOf(points.slice(0, 3))];
    append(one, point(90, 60));
    expect(other).toEqual(lineOf(points.slice(0, 3)));
    expect(one).not.toEqual(other);
  });

  it('may not lie in the past, and then changes nothing', () => {
    const line = lineOf([point(0, 20), point(10, 20)]);
    expect(() => append(line, point(9, 20))).toThrow(/forward in time/);
    expect(() => append(line, point(9, 50))).toThrow(/forward in time/);
    expect(line).toEqual(lineOf([point(0, 20), point(10, 20)]));
    const share = shareOf(line);
    expect(shareOf(append(line, point(10, 50)))).toBe(share);
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
    expect(Math.abs(shareOf(line) / share - 1)).toBeLessThan(1e-6);
    const after = dueOf(line) === Infinity ? null : minutesBetween(points[0]?.at ?? START, dueOf(line));
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
