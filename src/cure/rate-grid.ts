import { rateIntegral, steadyRate, type RateTable } from './rate-table.js';
import { celsius, MILLISECONDS_PER_MINUTE, type Celsius } from './units.js';

/**
 * R of up to three milestones on one grid of equal cells, so that one look-up without a search serves all of them. Cubics
 * that meet R and the rate of their `RateTable` at both ends of a cell: a mean rate off by no more than a part in 1e7, and for
 * any sheet that is printed by a part in 1e8.
 */
export interface RateGrid {
  /** One to three; what is missing counts as a milestone that earns nothing. */
  readonly tables: readonly RateTable[];
  /** °C where cell 0 begins. It reaches down without end: nothing is earned there. */
  readonly coldest: number;
  readonly cellsPerDegree: number;
  /** It reaches up without end. */
  readonly lastCell: number;
  /**
   * Per cell four coefficients of each milestone's R, in powers of the part of the cell; shares per millisecond times degrees.
   * NaN in a cell with a bend inside, and in that which begins at a highest temperature that counts: there the tables answer.
   */
  readonly coefficients: Float64Array;
}

/** Milestones of one grid: as many as stay in registers. */
const LANES = 3;
/** Coefficients of a cubic. */
const TERMS = 4;
const PER_CELL = LANES * TERMS;
/** ln(rate) changes at most this much over a cell: a cubic's slope is off by about its third power / 125. */
const FINEST = 1 / 80;
/** A sheet steeper than any real one is less exact, not larger. */
const MOST_PER_DEGREE = 64;
const FEWEST_PER_DEGREE = 4;

const grids = new WeakMap<RateTable, RateGrid>();

/** The grid of one milestone, worked out once. */
export function gridOf(table: RateTable): RateGrid {
  const grid = grids.get(table) ?? rateGrid([table]);
  grids.set(table, grid);
  return grid;
}

/** The grid of one to three milestones; worth keeping, since it is many times the work of a single walk. */
export function rateGrid(tables: readonly RateTable[]): RateGrid {
  if (tables.length > LANES) throw new RangeError(`A grid holds ${LANES} milestones, not ${tables.length}.`);
  const bends = tables.flatMap((table) => table.kinks);
  const cellsPerDegree = perDegree(tables);
  // Whole degrees, where rows mostly are, are borders of cells.
  const first = bends.length === 0 ? 0 : Math.floor(Math.min(...bends));
  const last = bends.length === 0 ? 0 : Math.ceil(Math.max(...bends));
  const coldest = first - 1 / cellsPerDegree;
  // One cell of nothing below, one that a highest temperature may spoil, and the one that goes on.
  const lastCell = (last - first) * cellsPerDegree + 2;
  const coefficients = new Float64Array((lastCell + 1) * PER_CELL);
  for (let cell = 1; cell <= lastCell; cell += 1) {
    const start = celsius(coldest + cell / cellsPerDegree);
    const end = celsius(coldest + (cell + 1) / cellsPerDegree);
    for (const [lane, table] of tables.entries()) coefficients.set(cubic(table, start, end), cell * PER_CELL + lane * TERMS);
  }
  return { tables, coldest, cellsPerDegree, lastCell, coefficients };
}

/** A power of two, so that cells begin where binary fractions of a degree do. */
function perDegree(tables: readonly RateTable[]): number {
  const steepest = Math.max(0, ...tables.flatMap((table) => table.kinks.map((kink) => steepness(table, kink))));
  return Math.min(MOST_PER_DEGREE, Math.max(FEWEST_PER_DEGREE, 2 ** Math.ceil(Math.log2(steepest / FINEST))));
}

/** Change of ln(rate) per degree just above a row: between two rows it is largest at the cold end. */
function steepness(table: RateTable, from: Celsius): number {
  const little = 1e-3;
  const rate = steadyRate(table, from);
  const above = steadyRate(table, celsius(from + little));
  return rate > 0 && above > 0 ? Math.log(above / rate) / little : 0;
}

/** Meets R and the rate at both ends; exact where R is level or straight. */
function cubic(table: RateTable, start: Celsius, end: Celsius): readonly number[] {
  if (table.kinks.some((kink) => kink > start && kink < end) || table.ceiling === start) return [NaN, NaN, NaN, NaN];
  const here = rateIntegral(table, start) / MILLISECONDS_PER_MINUTE;
  if (start >= table.ceiling || end <= table.coldest) return [here, 0, 0, 0];
  const width = (end - start) / MILLISECONDS_PER_MINUTE;
  const rate = steadyRate(table, start) * width;
  if (start >= table.hottest) return [here, rate, 0, 0];
  const rise = rateIntegral(table, end) / MILLISECONDS_PER_MINUTE - here;
  const rateAtEnd = steadyRate(table, end) * width;
  return [here, rate, 3 * rise - 2 * rate - rateAtEnd, rate + rateAtEnd - 2 * rise];
}
