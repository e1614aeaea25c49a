import type { RateGrid } from './rate-grid.js';
import type { PackedPoints } from './temperature-point.js';

/** The last point of a history: three shares, R of three milestones there, its moment and its temperature. */
export type Sums = number[];
/** Three shares that must not be reached unseen, then the shares that a millisecond earns at the last temperature. */
export type Marks = number[];

// Not exported, nor imported: V8 knows the value of such a constant, but looks up a module's binding at each use.
const TIME = 6;
const TEMPERATURE = 7;
const PER_CELL = 12;
const TERMS = 4;
const NEAR = 1e-3;

/*
 * Both ways on stop before a point that needs thought: a milestone becomes full, the temperature hardly changes, time runs
 * backwards, the grid has no value. Written out for three milestones and without objects, so that all numbers stay in registers.
 */

/** Adds what many points earn, from `first` to before `end` in `points`; returns the place where it stopped. */
export function walk({ coefficients, coldest, cellsPerDegree, lastCell }: RateGrid, sums: Sums, marks: Marks, points: PackedPoints, first: number, end: number): number {
  const full0 = kept(marks, 0);
  const full1 = kept(marks, 1);
  const full2 = kept(marks, 2);
  let share0 = kept(sums, 0);
  let share1 = kept(sums, 1);
  let share2 = kept(sums, 2);
  let before0 = kept(sums, 3);
  let before1 = kept(sums, 4);
  let before2 = kept(sums, 5);
  let time = kept(sums, TIME);
  let temperature = kept(sums, TEMPERATURE);
  let index = first;
  for (; index < end; index += 2) {
    const now = at(points, index);
    const warm = at(points, index + 1);
    const place = (warm - coldest) * cellsPerDegree;
    const cell = place > 0 ? (place < lastCell ? place | 0 : lastCell) : 0;
    const x = place - cell;
    const base = cell * PER_CELL;
    const here0 = valueAt(coefficients, base, x);
    const here1 = valueAt(coefficients, base + TERMS, x);
    const here2 = valueAt(coefficients, base + 2 * TERMS, x);
    const length = now - time;
    const change = warm - temperature;
    if (!(length >= 0) || Math.abs(change) < NEAR) break;
    const slope = length / change;
    const sum0 = share0 + slope * (here0 - before0);
    const sum1 = share1 + slope * (here1 - before1);
    const sum2 = share2 + slope * (here2 - before2);
    if (!(sum0 < full0 && sum1 < full1 && sum2 < full2)) break;
    share0 = sum0;
    share1 = sum1;
    share2 = sum2;
    before0 = here0;
    before1 = here1;
    before2 = here2;
    time = now;
    temperature = warm;
  }
  sums[0] = share0;
  sums[1] = share1;
  sums[2] = share2;
  sums[3] = before0;
  sums[4] = before1;
  sums[5] = before2;
  sums[TIME] = time;
  sums[TEMPERATURE] = temperature;
  return index;
}

/** Adds what one point earns, and leaves the rates at its temperature; false: not done. */
export function step({ coefficients, coldest, cellsPerDegree, lastCell }: RateGrid, sums: Sums, marks: Marks, points: PackedPoints, index: number): boolean {
  const now = at(points, index);
  const warm = at(points, index + 1);
  const place = (warm - coldest) * cellsPerDegree;
  const cell = place > 0 ? (place < lastCell ? place | 0 : lastCell) : 0;
  const x = place - cell;
  const base = cell * PER_CELL;
  const b0 = at(coefficients, base + 1);
  const c0 = at(coefficients, base + 2);
  const d0 = at(coefficients, base + 3);
  const b1 = at(coefficients, base + 5);
  const c1 = at(coefficients, base + 6);
  const d1 = at(coefficients, base + 7);
  const b2 = at(coefficients, base + 9);
  const c2 = at(coefficients, base + 10);
  const d2 = at(coefficients, base + 11);
  const here0 = at(coefficients, base) + x * (b0 + x * (c0 + x * d0));
  const here1 = at(coefficients, base + 4) + x * (b1 + x * (c1 + x * d1));
  const here2 = at(coefficients, base + 8) + x * (b2 + x * (c2 + x * d2));
  const length = now - kept(sums, TIME);
  const change = warm - kept(sums, TEMPERATURE);
  if (!(length >= 0) || Math.abs(change) < NEAR) return false;
  const slope = length / change;
  const sum0 = kept(sums, 0) + slope * (here0 - kept(sums, 3));
  const sum1 = kept(sums, 1) + slope * (here1 - kept(sums, 4));
  const sum2 = kept(sums, 2) + slope * (here2 - kept(sums, 5));
  if (!(sum0 < kept(marks, 0) && sum1 < kept(marks, 1) && sum2 < kept(marks, 2))) return false;
  sums[0] = sum0;
  sums[1] = sum1;
  sums[2] = sum2;
  sums[3] = here0;
  sums[4] = here1;
  sums[5] = here2;
  sums[TIME] = now;
  sums[TEMPERATURE] = warm;
  marks[3] = cellsPerDegree * (b0 + x * (2 * c0 + 3 * x * d0));
  marks[4] = cellsPerDegree * (b1 + x * (2 * c1 + 3 * x * d1));
  marks[5] = cellsPerDegree * (b2 + x * (2 * c2 + 3 * x * d2));
  return true;
}

const valueAt = (coefficients: Float64Array, base: number, x: number): number =>
  at(coefficients, base) + x * (at(coefficients, base + 1) + x * (at(coefficients, base + 2) + x * at(coefficients, base + 3)));

// Two of the same, since V8 keeps in mind for each function what kinds of array it has seen.
const at = (numbers: Float64Array, index: number): number => numbers[index] ?? NaN;
const kept = (numbers: readonly number[], index: number): number => numbers[index] ?? NaN;
