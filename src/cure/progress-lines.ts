import { progressLine, type ProgressLine, type TemperaturePoint } from './progress-line.js';
import { rateBetween, rateIntegral, type RateTable } from './rate-table.js';
import { LANES, TERMS, type SharedTable } from './shared-table.js';
import { celsius, instant, MILLISECONDS_PER_MINUTE, type Celsius, type Instant } from './units.js';

/** Moments (milliseconds since 1970-01-01T00:00Z) and temperatures (°C), one after the other, in order of time. */
export type PackedPoints = Float64Array;

/** °C. Temperatures this close are left to `rateBetween`, which has a way for them; the others lose no digit that counts. */
const NEAR = 0.005;
/** From here on a milestone may be full: whether it is, `progressLine` decides. */
const NEARLY_FULL = 1 - 1e-9;
/** Between looks at whether a milestone is full. */
const POINTS_PER_BLOCK = 32;

/**
 * The lines of all milestones of a card over a long history: one walk for three milestones, one look-up per point, and nothing
 * made on the way. What `progressLine` says of each of them, but for a part in 1e10 of a sum.
 */
export function progressLines(shared: readonly SharedTable[], points: PackedPoints): ProgressLine[] {
  if (points.length < 2) throw new RangeError('A line needs a point.');
  return shared.flatMap((three) => linesOf(three, points));
}

/** Shares of three milestones, then their R at the last point. */
type Sums = Float64Array;

function linesOf(shared: SharedTable, points: PackedPoints): ProgressLine[] {
  const count = points.length >> 1;
  const { tables } = shared;
  const sums = new Float64Array(2 * LANES);
  const before = new Float64Array(2 * LANES);
  for (const [lane, table] of tables.entries()) sums[LANES + lane] = rateIntegral(table, celsius(at(points, 1)));
  const dues = tables.map((): Instant | null => null);
  for (let first = 1; first < count; first += POINTS_PER_BLOCK) {
    const last = Math.min(count, first + POINTS_PER_BLOCK);
    for (let index = 0; index < sums.length; index += 1) before[index] = at(sums, index);
    walk(shared, points, first, last, sums);
    for (let lane = 0; lane < tables.length; lane += 1) {
      if (at(sums, lane) > NEARLY_FULL && dues[lane] === null) dues[lane] = dueBetween(shared, lane, points, first, last, before);
    }
  }
  const end = pointAt(points, count - 1);
  return tables.map((table, lane) => ({ table, last: end, integral: at(sums, LANES + lane), share: at(sums, lane), due: dues[lane] ?? null }));
}

/** The same block once more, point by point. */
function dueBetween(shared: SharedTable, lane: number, points: PackedPoints, first: number, last: number, begin: Sums): Instant | null {
  const sums = begin.slice();
  const table = shared.tables[lane];
  for (let index = first; table !== undefined && index < last; index += 1) {
    const share = at(sums, lane);
    walk(shared, points, index, index + 1, sums);
    const due = at(sums, lane) > NEARLY_FULL ? progressLine(table, pointAt(points, index - 1), [pointAt(points, index)], share).due : null;
    if (due !== null) return due;
  }
  return null;
}

/** Adds what some points earn. Written out for three milestones: their sums stay in registers. */
function walk({ tables, starts, coefficients, cells, coldest, cellsPerDegree }: SharedTable, points: PackedPoints, first: number, last: number, sums: Sums): void {
  const lastCell = cells.length - 1;
  let share0 = at(sums, 0);
  let share1 = at(sums, 1);
  let share2 = at(sums, 2);
  let before0 = at(sums, 3);
  let before1 = at(sums, 4);
  let before2 = at(sums, 5);
  let time = at(points, 2 * first - 2);
  let temperature = celsius(at(points, 2 * first - 1));
  for (let index = 2 * first; index < 2 * last; index += 2) {
    const now = at(points, index);
    const warm = celsius(at(points, index + 1));
    const length = (now - time) / MILLISECONDS_PER_MINUTE;
    if (!(length >= 0)) throw new RangeError(`A temperature history goes forward in time: ${now} stands after ${time}.`);
    const cell = (warm - coldest) * cellsPerDegree + 1;
    // Rounding may give the piece above: its polynomial is as good an ulp below its start.
    let piece = cells[cell > 0 ? (cell < lastCell ? cell | 0 : lastCell) : 0] ?? 0;
    while (warm >= at(starts, piece + 1)) piece += 1;
    const x = warm - at(starts, piece);
    const square = x * x;
    const base = piece * LANES * TERMS;
    const here0 = valueAt(coefficients, base, x, square);
    const here1 = valueAt(coefficients, base + TERMS, x, square);
    const here2 = valueAt(coefficients, base + 2 * TERMS, x, square);
    const change = warm - temperature;
    const near = change < NEAR && change > -NEAR;
    const slope = near ? 0 : length / change;
    share0 += slope * (here0 - before0);
    share1 += slope * (here1 - before1);
    share2 += slope * (here2 - before2);
    if (near) {
      share0 += length * nearRate(tables[0], temperature, warm, before0, here0);
      share1 += length * nearRate(tables[1], temperature, warm, before1, here1);
      share2 += length * nearRate(tables[2], temperature, warm, before2, here2);
    }
    time = now;
    temperature = warm;
    before0 = here0;
    before1 = here1;
    before2 = here2;
  }
  sums[0] = share0;
  sums[1] = share1;
  sums[2] = share2;
  sums[3] = before0;
  sums[4] = before1;
  sums[5] = before2;
}

function valueAt(coefficients: Float64Array, base: number, x: number, square: number): number {
  const low = at(coefficients, base) + x * at(coefficients, base + 1);
  const middle = at(coefficients, base + 2) + x * at(coefficients, base + 3);
  const high = at(coefficients, base + 4) + x * at(coefficients, base + 5);
  return low + square * (middle + square * high);
}

const nearRate = (table: RateTable | undefined, from: Celsius, to: Celsius, before: number, here: number): number =>
  table === undefined ? 0 : rateBetween(table, from, to, before, here);

const pointAt = (points: PackedPoints, index: number): TemperaturePoint => ({ at: instant(at(points, 2 * index)), temperature: celsius(at(points, 2 * index + 1)) });

const at = (numbers: Float64Array, index: number): number => numbers[index] ?? NaN;
