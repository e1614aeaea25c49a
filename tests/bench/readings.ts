import { beginLines, dueIfHeld, goAlong, shareOf, type ProgressLines } from '../../src/cure/progress-lines.js';
import type { RateGrid } from '../../src/cure/rate-grid.js';
import type { PackedPoints } from '../../src/cure/temperature-point.js';
import { celsius, instant } from '../../src/cure/units.js';
import { errorOf, historyOf, inMinutes, MILESTONES, stretchesOf, trueShares } from './history.js';
import { stretchwise } from './solver-forecast.js';
import { RATES, type Contestant } from './solvers.js';

/** Readings that come one by one; then again from the same place, before any milestone is full. */
export const READINGS = 24;
const MINUTES_BEFORE = 20;
/** Minutes between neighbours of `historyOf`, about. */
const USUAL = 5;

export type Hold = (temperature: number, shares: Float64Array) => Float64Array;

/** Lines along a history, up to its last point. */
export function linesAlong(grid: RateGrid, points: PackedPoints): ProgressLines {
  const [at = NaN, temperature = NaN] = points;
  const lines = beginLines(grid, { at: instant(at), temperature: celsius(temperature) });
  goAlong(lines, points, 2);
  return lines;
}

/** A history of so many points in the first minutes. */
const before = (length: number): PackedPoints => historyOf(length, 7, MINUTES_BEFORE / USUAL / length);

/** Its last point, and readings two minutes apart or so. */
export function readingsAfter(length: number): PackedPoints {
  const history = before(length);
  const [at = NaN, temperature = NaN] = history.subarray(-2);
  const readings = historyOf(READINGS, 8, 0.4);
  return Float64Array.of(at, temperature, ...readings.map((value, index) => (index % 2 === 0 ? at + value : value)));
}

/** One reading after the other, given to lines that have all points before it; of each the due times of all milestones. */
export function ourReadings(grid: RateGrid, length: number): () => number {
  const readings = readingsAfter(length);
  const lines = linesAlong(grid, before(length));
  const begin = lines.sums.slice();
  const run = (): number => {
    for (let index = 0; index < begin.length; index += 1) lines.sums[index] = begin[index] ?? NaN;
    let sum = 0;
    for (let index = 2; index < readings.length; index += 2) {
      goAlong(lines, readings, index, index + 2);
      sum += dueIfHeld(lines, 0) + dueIfHeld(lines, 1) + dueIfHeld(lines, 2);
    }
    return sum;
  };
  run();
  if (lines.dues.some((due) => due < Infinity)) throw new Error('Nothing is due yet, or a reading would have nothing to compute.');
  return run;
}

/** The largest relative error of what a single reading adds. */
export const ourReadingError = (grid: RateGrid, length: number): number =>
  Math.max(...stretchesOf(readingsAfter(length)).map((stretch) => errorOf(MILESTONES.map((_, lane) => shareOf(linesAlong(grid, stretch), lane)), trueShares(stretch))));

/** The same readings given to a solver that goes on from the shares before, and then to where everything is full if the temperature stays. */
export function theirReadings(grid: RateGrid, length: number, { integrator, rows, tolerance }: Contestant, hold: Hold): () => number {
  const readings = inMinutes(readingsAfter(length));
  const lines = linesAlong(grid, before(length));
  const begin = Float64Array.from(MILESTONES, (_, lane) => shareOf(lines, lane));
  const shares = new Float64Array(MILESTONES.length);
  const along = stretchwise(integrator, MILESTONES.length, RATES, tolerance, rows);
  return () => {
    for (let index = 0; index < begin.length; index += 1) shares[index] = begin[index] ?? NaN;
    let sum = 0;
    for (let index = 2; index < readings.length; index += 2) {
      along(readings, index, shares);
      const rests = hold(readings[index + 1] ?? NaN, shares);
      for (let milestone = 0; milestone < rests.length; milestone += 1) sum += (readings[index] ?? NaN) + (rests[milestone] ?? NaN);
    }
    return sum;
  };
}

/** Where the temperature stays, a division does it. */
export function dividedOut(): Hold {
  const rests = new Float64Array(MILESTONES.length);
  return (temperature, shares) => {
    RATES(temperature, rests);
    for (let milestone = 0; milestone < rests.length; milestone += 1) rests[milestone] = (1 - (shares[milestone] ?? NaN)) / (rests[milestone] ?? NaN);
    return rests;
  };
}
