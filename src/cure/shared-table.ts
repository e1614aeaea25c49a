import { rateIntegral, type RateTable } from './rate-table.js';
import { celsius } from './units.js';

/**
 * The tables of three milestones in one: a piece ends wherever one of theirs does, so that one look-up serves all three. Their
 * polynomials are the same, only written from another start; below the coldest row and above the hottest there are pieces as well.
 */
export interface SharedTable {
  /** One to three; what is missing counts as a milestone that earns nothing. */
  readonly tables: readonly RateTable[];
  /** °C where each piece begins, and Infinity after the last. */
  readonly starts: Float64Array;
  /** Per piece six coefficients of each milestone's R, in powers of (T - start). */
  readonly coefficients: Float64Array;
  /** The first piece that reaches into each of many equal cells from `coldest` on; one cell before them, one after. */
  readonly cells: Uint16Array;
  readonly coldest: number;
  readonly cellsPerDegree: number;
}

/** Milestones of one table: as many as stay in registers. */
export const LANES = 3;
/** Coefficients of a quintic. */
export const TERMS = 6;
/** Numbers per piece of a `RateTable`. */
const STRIDE = 8;
const CELLS_PER_PIECE = 16;
/** °C, colder than anything: where the piece begins in which nothing is earned. */
const NOTHING_HERE = -1000;

/** The tables of a card, three at a time; worth keeping, since it is many times the work of a single walk. */
export function sharedTables(tables: readonly RateTable[]): SharedTable[] {
  const groups = Array.from({ length: Math.ceil(tables.length / LANES) }, (_, index) => tables.slice(LANES * index, LANES * (index + 1)));
  return groups.map(shared);
}

function shared(tables: readonly RateTable[]): SharedTable {
  const bounds = tables.flatMap((table) => [...startsOf(table), table.hottest, table.ceiling]).filter((bound) => Math.abs(bound) < Infinity);
  const starts = [NOTHING_HERE, ...[...new Set(bounds)].sort((one, other) => one - other)];
  const coldest = starts[1] ?? 0;
  const width = (starts.at(-1) ?? 0) - coldest;
  const count = starts.length * CELLS_PER_PIECE;
  const cellsPerDegree = width > 0 ? count / width : 1;
  const lanes = Array.from({ length: LANES }, (_, lane) => tables[lane]);
  const coefficients = starts.flatMap((start) => lanes.flatMap((table) => (table === undefined ? NOTHING : from(table, start))));
  return { tables, starts: Float64Array.from([...starts, Infinity]), coefficients: Float64Array.from(coefficients), cells: cellsOf(starts, count, coldest, cellsPerDegree), coldest, cellsPerDegree };
}

const startsOf = (table: RateTable): number[] => Array.from({ length: (table.pieces.length - 1) / STRIDE }, (_, index) => table.pieces[STRIDE * index] ?? NaN);

const NOTHING: readonly number[] = [0, 0, 0, 0, 0, 0];

/** The table's R from a temperature on, in powers of the distance; holds up to the table's next bound. */
function from(table: RateTable, start: number): readonly number[] {
  if (start < table.coldest) return NOTHING;
  const here = rateIntegral(table, celsius(start));
  if (start >= table.ceiling) return [here, 0, 0, 0, 0, 0];
  if (start >= table.hottest) return [here, table.hottestRate, 0, 0, 0, 0];
  let base = 0;
  while (start >= (table.pieces[base + STRIDE] ?? Infinity)) base += STRIDE;
  const [begin = NaN, perWidth = NaN, ...scaled] = table.pieces.subarray(base, base + STRIDE);
  return movedTo(start - begin, scaled.map((coefficient, power) => coefficient * perWidth ** power));
}

/** The same polynomial about another origin (Horner's scheme, term by term). */
function movedTo(origin: number, polynomial: readonly number[]): number[] {
  const moved = [...polynomial];
  for (let term = 0; term < moved.length; term += 1) {
    for (let power = moved.length - 2; power >= term; power -= 1) moved[power] = (moved[power] ?? NaN) + origin * (moved[power + 1] ?? NaN);
  }
  return moved;
}

function cellsOf(starts: readonly number[], count: number, coldest: number, cellsPerDegree: number): Uint16Array {
  const cells = new Uint16Array(count + 2);
  let piece = Math.min(1, starts.length - 1);
  for (let cell = 0; cell <= count; cell += 1) {
    while ((starts[piece + 1] ?? Infinity) <= coldest + cell / cellsPerDegree) piece += 1;
    cells[cell + 1] = piece;
  }
  return cells;
}
