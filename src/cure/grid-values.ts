import type { RateGrid } from './rate-grid.js';
import { nearRate, rateIntegral, steadyRate } from './rate-table.js';
import { MILLISECONDS_PER_MINUTE, type Celsius } from './units.js';

// As in `RateGrid` and `walk`; constants of this file, since it is called in the middle of a walk.
const PER_CELL = 12;
const TERMS = 4;
const NEAR = 1e-3;

/** R of a milestone, in shares per millisecond times degrees. */
export function integralAt({ tables, coefficients, coldest, cellsPerDegree, lastCell }: RateGrid, lane: number, temperature: Celsius): number {
  const place = (temperature - coldest) * cellsPerDegree;
  const cell = place > 0 ? (place < lastCell ? place | 0 : lastCell) : 0;
  const x = place - cell;
  const base = cell * PER_CELL + lane * TERMS;
  const value = at(coefficients, base) + x * (at(coefficients, base + 1) + x * (at(coefficients, base + 2) + x * at(coefficients, base + 3)));
  const table = tables[lane];
  return Number.isNaN(value) && table !== undefined ? rateIntegral(table, temperature) / MILLISECONDS_PER_MINUTE : value;
}

/** Share of a milestone that a millisecond at a steady temperature earns: the slope of R. */
export function rateAt({ tables, coefficients, coldest, cellsPerDegree, lastCell }: RateGrid, lane: number, temperature: Celsius): number {
  const place = (temperature - coldest) * cellsPerDegree;
  const cell = place > 0 ? (place < lastCell ? place | 0 : lastCell) : 0;
  const x = place - cell;
  const base = cell * PER_CELL + lane * TERMS;
  const rate = cellsPerDegree * (at(coefficients, base + 1) + x * (2 * at(coefficients, base + 2) + 3 * x * at(coefficients, base + 3)));
  const table = tables[lane];
  return Number.isNaN(rate) && table !== undefined ? steadyRate(table, temperature) / MILLISECONDS_PER_MINUTE : rate;
}

/** Mean share per millisecond while the temperature goes from one value to another in a straight line; R at both is known. */
export function meanRateOn({ tables }: RateGrid, lane: number, from: Celsius, to: Celsius, before: number, here: number): number {
  const change = to - from;
  if (change >= NEAR || change <= -NEAR) return (here - before) / change;
  const table = tables[lane];
  return table === undefined ? 0 : nearRate(table, from, to) / MILLISECONDS_PER_MINUTE;
}

const at = (numbers: Float64Array, index: number): number => numbers[index] ?? NaN;
