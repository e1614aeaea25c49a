import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beginLines, dueIfHeld, dueOf, goAlong, lastPoint, shareOf, type ProgressLines } from '../../../src/cure/progress-lines.js';
import { rateGrid } from '../../../src/cure/rate-grid.js';
import { rateTable, type RateTable } from '../../../src/cure/rate-table.js';
import type { TemperaturePoint } from '../../../src/cure/temperature-point.js';
import { celsius, instant, minutes, plus } from '../../../src/cure/units.js';
import { on, rows } from '../../support/joint.js';
import { append, lineAlong, linesAlong, packed } from '../../support/lines-along.js';

const START = on('08:00');
/** A sheet of one row, one without rows, maxima below, between and above the rows. */
const TABLES = [
  rateTable(rows({ 15: 450, 20: 300, 30: 150, 40: 75, 65: 25 })),
  rateTable(rows({ 21.11: 3000, 37.78: 950, 60.56: 225 }), celsius(45.5)),
  rateTable(rows({ 23: 1440 })),
  rateTable(rows({ 20: 400, 22: 90, 23: 89, 60: 3 }), celsius(70)),
  rateTable([]),
  rateTable(rows({ 40: 100, 60: 30 }), celsius(30)),
];
const GRIDS = [TABLES.slice(0, 3), TABLES.slice(3), TABLES.slice(1, 3), [rateTable(rows({ 23: 1440 }))]];

const temperature = fc.oneof(
  fc.integer({ min: 10, max: 70 }),
  fc.constantFrom(15, 21.11, 22, 22.999999999999996, 23, 45.5, 60, 60.56, 70),
  fc.integer({ min: 2000, max: 2010 }).map((hundredths) => hundredths / 100),
  fc.double({ min: -50, max: 120, noNaN: true }),
).map(celsius);
const length = fc.oneof(fc.integer({ min: 0, max: 300 }), fc.double({ min: 0, max: 60, noNaN: true }));
const points = fc.array(fc.record({ length, temperature }), { minLength: 1, maxLength: 80, size: 'max' }).map((parts) => {
  let at = START;
  return parts.map((part): TemperaturePoint => ({ at: (at = plus(at, minutes(part.length))), temperature: part.temperature }));
});

/** What several milestones at once say of one, against the line of that milestone alone. */
function expectSame(lines: ProgressLines, lane: number, alone: ProgressLines): void {
  expect(lastPoint(lines)).toEqual(lastPoint(alone));
  expect(Math.abs(shareOf(lines, lane) - shareOf(alone))).toBeLessThanOrEqual(3e-8 * Math.max(1, shareOf(alone)));
  const [due, dueAlone] = [dueIfHeld(lines, lane), dueIfHeld(alone)];
  if (dueAlone === Infinity) expect(due).toBe(Infinity);
  else expect(Math.abs(due - dueAlone)).toBeLessThanOrEqual(Math.max(1, 1e-7 * (dueAlone - START)));
}

describe('several lines over one packed history', () => {
  it.each(GRIDS.map((tables) => [tables.length, tables] as const))('say what each line says by itself, also of the next point: %d at once', (_count, tables) => {
    const grid = rateGrid(tables);
    fc.assert(
      fc.property(points, temperature, (history, next) => {
        const lines = linesAlong(grid, history);
        const alone = tables.map((table) => lineAlong(table, history));
        for (const [lane, line] of alone.entries()) expectSame(lines, lane, line);
        const more = { at: plus(lastPoint(lines).at, minutes(7)), temperature: next };
        append(lines, more);
        for (const [lane, line] of alone.entries()) expectSame(lines, lane, append(line, more));
      }),
      { numRuns: 3000 },
    );
  });

  it('are full at the very moment at which they would be by themselves', () => {
    const history = [20, 60, 20, 18].map((warm, index) => ({ at: plus(START, minutes(100 * index)), temperature: celsius(warm) }));
    const [one, ...others] = TABLES.slice(0, 3).map((table: RateTable) => dueOf(lineAlong(table, history)));
    expect(one).toBeLessThan(plus(START, minutes(100)));
    const lines = linesAlong(rateGrid(TABLES.slice(0, 3)), history);
    for (const [lane, due] of [one, ...others].entries()) expect(Math.abs(dueOf(lines, lane) - (due ?? NaN)) || 0).toBeLessThan(1);
  });

  it('are three at most, and of nothing where there is no milestone', () => {
    expect(() => rateGrid(TABLES.slice(0, 4))).toThrow(/holds 3 milestones, not 4/);
    const lines = linesAlong(rateGrid([]), [{ at: START, temperature: celsius(20) }, { at: plus(START, minutes(60)), temperature: celsius(60) }]);
    expect([shareOf(lines), dueIfHeld(lines)]).toEqual([0, Infinity]);
  });

  it('need points in order of time', () => {
    const grid = rateGrid(TABLES.slice(0, 3));
    const later = { at: instant(60_000), temperature: celsius(20) };
    for (const wrong of [[0, 30], [0, 20], [NaN, 30]]) expect(() => { goAlong(beginLines(grid, later), Float64Array.from(wrong)); }).toThrow(/forward in time/);
    expect(() => { goAlong(beginLines(grid, later), packed([{ at: instant(120_000), temperature: celsius(40) }, { at: instant(90_000), temperature: celsius(50) }])); }).toThrow(/forward in time/);
  });

  it('know what was earned before, and become full only once', () => {
    const grid = rateGrid(TABLES.slice(0, 1));
    const along = packed([{ at: plus(START, minutes(100)), temperature: celsius(60) }]);
    const [half, full] = [beginLines(grid, { at: START, temperature: celsius(20) }, 0.5), beginLines(grid, { at: START, temperature: celsius(20) }, 1.5)];
    for (const lines of [half, full]) goAlong(lines, along);
    expect(shareOf(full) - shareOf(half)).toBeCloseTo(1, 12);
    expect(dueOf(half)).toBeLessThan(plus(START, minutes(100)));
    expect(dueOf(full)).toBe(Infinity);
  });
});
