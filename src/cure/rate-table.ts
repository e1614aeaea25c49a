import { arrheniusRows, lineThrough, rateOn, type ArrheniusLine } from './arrhenius.js';
import type { SheetRow } from './card.js';
import { integral } from './quadrature.js';
import { celsius, kelvinFromCelsius, type Celsius } from './units.js';

/**
 * The antiderivative over temperature of a milestone's expected rate, in shares per minute times degrees: a linear
 * change of temperature from T0 to T1 in dt minutes earns dt * (R(T1) - R(T0)) / (T1 - T0).
 */
export interface RateTable {
  /** Row temperatures, coldest first, and the highest that counts: between them the rate is smooth. */
  readonly kinks: readonly Celsius[];
  readonly coldest: number;
  readonly hottest: number;
  /** R and the rate at the hottest row, from where R goes on as a straight line. */
  readonly hottestIntegral: number;
  readonly hottestRate: number;
  /** Above it nothing is earned; Infinity: no such limit. */
  readonly ceiling: number;
  /** Pieces of R, eight numbers each: start °C, 1 / width, and six coefficients in (T - start) / width. */
  readonly pieces: Float64Array;
  /** The first piece that reaches into each of many equal cells between coldest and hottest. */
  readonly cells: Uint16Array;
  readonly cellsPerDegree: number;
}

/** Numbers per piece: one cache line. */
const STRIDE = 8;
/** ln(rate) changes at most this much over a piece: keeps the relative error of the interpolated rate below 1e-10. */
const FINEST = 0.05;
const CELLS_PER_PIECE = 16;
/** °C. Below it the difference of two values of R would lose digits. */
const NEAR = 0.05;

const tables = new WeakMap<readonly SheetRow[], readonly RateTable[]>();

/** The table of a card's rows, with the highest temperature that counts (null: no limit); worked out once for each array of rows. */
export function rateTable(rows: readonly SheetRow[], maximum: Celsius | null = null): RateTable {
  const ceiling = maximum ?? Infinity;
  const made = tables.get(rows) ?? [];
  const known = made.find((one) => one.ceiling === ceiling);
  if (known !== undefined) return known;
  const table = tabulate(arrheniusRows(rows), ceiling);
  tables.set(rows, [...made, table]);
  return table;
}

/** R at a temperature: 0 up to the coldest row; level above the highest temperature that counts. */
export function rateIntegral(table: RateTable, reached: Celsius): number {
  const temperature = reached > table.ceiling ? table.ceiling : reached;
  if (temperature <= table.coldest) return 0;
  if (temperature >= table.hottest) return table.hottestIntegral + (temperature - table.hottest) * table.hottestRate;
  const { pieces } = table;
  const base = pieceAt(table, temperature);
  const x = (temperature - at(pieces, base)) * at(pieces, base + 1);
  const square = x * x;
  const low = at(pieces, base + 2) + x * at(pieces, base + 3);
  const middle = at(pieces, base + 4) + x * at(pieces, base + 5);
  const high = at(pieces, base + 6) + x * at(pieces, base + 7);
  return low + square * (middle + square * high);
}

/** Share earned per minute at a steady temperature. */
export function steadyRate(table: RateTable, temperature: Celsius): number {
  if (temperature < table.coldest || temperature > table.ceiling) return 0;
  if (temperature >= table.hottest) return table.hottestRate;
  const { pieces } = table;
  const base = pieceAt(table, temperature);
  const perWidth = at(pieces, base + 1);
  const x = (temperature - at(pieces, base)) * perWidth;
  return perWidth * (at(pieces, base + 3) + x * (2 * at(pieces, base + 4) + x * (3 * at(pieces, base + 5) + x * (4 * at(pieces, base + 6) + x * 5 * at(pieces, base + 7)))));
}

/** Mean share per minute while the temperature goes from one value to another in a straight line. */
export function meanRate(table: RateTable, from: Celsius, to: Celsius): number {
  return rateBetween(table, from, to, rateIntegral(table, from), rateIntegral(table, to));
}

/** As `meanRate`, for a caller that has R at both temperatures already. */
export function rateBetween(table: RateTable, from: Celsius, to: Celsius, integralFrom: number, integralTo: number): number {
  const change = to - from;
  return change > NEAR || change < -NEAR ? (integralTo - integralFrom) / change : nearRate(table, from, to);
}

/** As `meanRate`, for temperatures so close that R(T1) - R(T0) would be mostly rounding: no difference is taken. */
export function nearRate(table: RateTable, from: Celsius, to: Celsius): number {
  if (from === to) return steadyRate(table, from);
  const low = from < to ? from : to;
  const high = from < to ? to : from;
  const counted = Math.min(high, table.ceiling);
  let sum = Math.max(0, counted - Math.max(low, table.hottest)) * table.hottestRate;
  let start = Math.max(low, table.coldest);
  const end = Math.min(counted, table.hottest);
  if (start < end) {
    for (let base = pieceAt(table, start); start < end; base += STRIDE) {
      const stop = Math.min(end, at(table.pieces, base + STRIDE));
      sum += (stop - start) * meanInPiece(table.pieces, base, start, stop);
      start = stop;
    }
  }
  return sum / (high - low);
}

/** Mean of the slope of R inside one piece; stable however close the ends are. */
function meanInPiece(pieces: Float64Array, base: number, from: number, to: number): number {
  const start = at(pieces, base);
  const perWidth = at(pieces, base + 1);
  const x = (from - start) * perWidth;
  const y = (to - start) * perWidth;
  // (y^n - x^n) / (y - x) = x^(n-1) + x^(n-2) y + … + y^(n-1)
  let symmetric = 1;
  let power = 1;
  let sum = at(pieces, base + 3);
  for (let n = 4; n < STRIDE; n += 1) {
    power *= y;
    symmetric = symmetric * x + power;
    sum += at(pieces, base + n) * symmetric;
  }
  return sum * perWidth;
}

/**
 * Where the piece begins that holds this temperature, which lies from the coldest row to below the hottest. Rounding may
 * give the piece above: its polynomial is as good an ulp below its start.
 */
function pieceAt(table: RateTable, temperature: number): number {
  let base = (table.cells[((temperature - table.coldest) * table.cellsPerDegree) | 0] ?? 0) * STRIDE;
  while (temperature >= at(table.pieces, base + STRIDE)) base += STRIDE;
  return base;
}

const at = (pieces: Float64Array, index: number): number => pieces[index] ?? Infinity;

function tabulate(rows: readonly SheetRow[], ceiling: number): RateTable {
  const hot = rows.at(-1);
  const coldest = rows[0]?.temperature ?? Infinity;
  const hottest = hot?.temperature ?? Infinity;
  const numbers: number[] = [];
  let sum = 0;
  for (const [index, row] of rows.entries()) {
    const next = rows[index + 1];
    if (next !== undefined) sum = addPieces(numbers, row, next, sum);
  }
  // A last start without a piece ends every search.
  const pieces = Float64Array.from([...numbers, hottest]);
  const count = numbers.length / STRIDE;
  const cellsPerDegree = count === 0 ? 0 : (count * CELLS_PER_PIECE) / (hottest - coldest);
  const kinks = [...rows.map((row) => row.temperature), ...(ceiling === Infinity ? [] : [celsius(ceiling)])];
  const shared = { kinks, ceiling, coldest, hottest, hottestIntegral: sum, hottestRate: hot === undefined ? 0 : 1 / hot.minutes, pieces, cellsPerDegree };
  return { ...shared, cells: cellsOf(pieces, count, coldest, cellsPerDegree) };
}

/** Pieces of equal width between two rows; returns R at the hotter one. */
function addPieces(numbers: number[], cold: SheetRow, hot: SheetRow, before: number): number {
  const line = lineThrough(cold, hot);
  const gap = hot.temperature - cold.temperature;
  const steepest = Math.abs(line.slope) / kelvinFromCelsius(cold.temperature) ** 2;
  const count = Math.max(1, Math.ceil((gap * steepest) / FINEST));
  let sum = before;
  for (let index = 0; index < count; index += 1) {
    const start = cold.temperature + (gap * index) / count;
    const end = index + 1 === count ? hot.temperature : cold.temperature + (gap * (index + 1)) / count;
    const earned = integral((temperature) => rateOn(line, celsius(temperature)), start, end);
    numbers.push(start, 1 / (end - start), sum, ...hermite(line, start, end, earned));
    sum += earned;
  }
  return sum;
}

/** Quintic Hermite: meets R, the rate and the slope of the rate at both ends. */
function hermite(line: ArrheniusLine, start: number, end: number, earned: number): readonly [number, number, number, number, number] {
  const width = end - start;
  const [v, w] = [rateOn(line, celsius(start)) * width, rateOn(line, celsius(end)) * width];
  const bend = (temperature: number, scaled: number): number => (scaled * width * line.slope) / kelvinFromCelsius(celsius(temperature)) ** 2;
  const [a, b] = [bend(start, v), bend(end, w)];
  return [v, a / 2, 10 * earned - 6 * v - 4 * w - 1.5 * a + 0.5 * b, -15 * earned + 8 * v + 7 * w + 1.5 * a - b, 6 * earned - 3 * (v + w) - 0.5 * a + 0.5 * b];
}

function cellsOf(pieces: Float64Array, count: number, coldest: number, cellsPerDegree: number): Uint16Array {
  const cells = new Uint16Array(count * CELLS_PER_PIECE + 1);
  let piece = 0;
  for (let cell = 0; cell < cells.length; cell += 1) {
    while (piece + 1 < count && at(pieces, (piece + 1) * STRIDE) <= coldest + cell / cellsPerDegree) piece += 1;
    cells[cell] = piece;
  }
  return cells;
}
