import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { append, dueIfHeld, progressLine, type ProgressLine, type TemperaturePoint } from '../../../src/cure/progress-line.js';
import { progressLines } from '../../../src/cure/progress-lines.js';
import { rateTable } from '../../../src/cure/rate-table.js';
import { sharedTables } from '../../../src/cure/shared-table.js';
import { celsius, minutes, plus } from '../../../src/cure/units.js';
import { on, rows } from '../../support/joint.js';

const START = on('08:00');
/** Five milestones: two shared tables, one of them not full; a sheet of one row, one without rows, maxima below, between and above the rows. */
const TABLES = [
  rateTable(rows({ 15: 450, 20: 300, 30: 150, 40: 75, 65: 25 })),
  rateTable(rows({ 21.11: 3000, 37.78: 950, 60.56: 225 }), celsius(45.5)),
  rateTable(rows({ 23: 1440 })),
  rateTable(rows({ 20: 400, 22: 90, 23: 89, 60: 3 }), celsius(70)),
  rateTable([]),
  rateTable(rows({ 40: 100, 60: 30 }), celsius(30)),
];
const LONE = [rateTable(rows({ 23: 1440 }))];

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

const packed = (history: readonly TemperaturePoint[]): Float64Array => Float64Array.from(history.flatMap((point) => [point.at, point.temperature]));

/** What several milestones at once say of one, against the line of that milestone alone. */
function expectSame(line: ProgressLine, alone: ProgressLine): void {
  expect(line.table).toBe(alone.table);
  expect(line.last).toEqual(alone.last);
  expect(Math.abs(line.integral - alone.integral)).toBeLessThanOrEqual(1e-12 * Math.max(1, alone.integral));
  expect(Math.abs(line.share - alone.share)).toBeLessThanOrEqual(1e-10 * Math.max(1, alone.share));
  const [due, dueAlone] = [dueIfHeld(line), dueIfHeld(alone)];
  if (dueAlone === null) expect(due).toBeNull();
  else expect(Math.abs((due ?? NaN) - dueAlone)).toBeLessThan(1);
}

describe('several lines over one packed history', () => {
  it.each([['five milestones and one that never comes', TABLES], ['one milestone', LONE]])('say what each line says by itself, also of the next point: %s', (_name, tables) => {
    const shared = sharedTables(tables);
    fc.assert(
      fc.property(points, temperature, (history, next) => {
        const [first, ...rest] = history;
        if (first === undefined) return;
        const lines = progressLines(shared, packed(history));
        expect(lines).toHaveLength(tables.length);
        for (const [index, line] of lines.entries()) {
          const alone = progressLine(line.table, first, rest);
          expect(line.table).toBe(tables[index]);
          expectSame(line, alone);
          const more = { at: plus(line.last.at, minutes(7)), temperature: next };
          expectSame(append(line, more), append(alone, more));
        }
      }),
      { numRuns: 5000 },
    );
  });

  it('are full at the very moment at which they would be by themselves', () => {
    const first = { at: START, temperature: celsius(20) };
    const rest = [60, 20, 18].map((warm, index) => ({ at: plus(START, minutes(100 * (index + 1))), temperature: celsius(warm) }));
    const alone = TABLES.map((table) => progressLine(table, first, rest).due);
    expect(alone[0]).not.toBeNull();
    expect(progressLines(sharedTables(TABLES), packed([first, ...rest])).map((line) => line.due)).toEqual(alone);
  });

  it('are none where there is no milestone', () => {
    expect(progressLines(sharedTables([]), Float64Array.of(0, 20, 60_000, 30))).toEqual([]);
  });

  it('need a point, and points in order of time', () => {
    const shared = sharedTables(TABLES);
    expect(() => progressLines(shared, new Float64Array(0))).toThrow(/needs a point/);
    expect(() => progressLines(shared, Float64Array.of(60_000, 20, 0, 30))).toThrow(/forward in time/);
    expect(() => progressLines(shared, Float64Array.of(0, 20, NaN, 30))).toThrow(/forward in time/);
  });
});
