import type { SheetRow } from '../../src/cure/card.js';
import type { PackedPoints } from '../../src/cure/temperature-point.js';
import { celsius, minutes, MILLISECONDS_PER_MINUTE } from '../../src/cure/units.js';
import { passes, solvedShare } from '../support/expected-oracle.js';

/** Invented figures. */
export const MILESTONES: readonly (readonly SheetRow[])[] = [
  { 15: 450, 20: 300, 30: 150, 40: 75, 65: 25 },
  { 15: 3120, 20: 2160, 30: 1080, 40: 480, 65: 80 },
  { 15: 1440, 23: 720, 60: 60 },
].map((figures) => Object.entries(figures).map(([temperature, wait]) => ({ temperature: celsius(Number(temperature)), minutes: minutes(wait) })));

/** A joint that is read every five minutes or so while a lamp comes and goes; never below the coldest row, where a solver meets a jump. */
export function historyOf(length: number, seed = 7, apart = 1): PackedPoints {
  let state = seed;
  const random = (): number => (state = (state * 1_103_515_245 + 12_345) % 2_147_483_648) / 2_147_483_648;
  let time = 0;
  return Float64Array.from(Array.from({ length }, () => [(time += (3 + 4 * random()) * apart) * MILLISECONDS_PER_MINUTE, 33 + 14 * Math.sin(time / 90) + 4 * random()]).flat());
}

/** Minutes and temperatures, one after the other: what a solver is given, so that it need not convert. */
export const inMinutes = (points: PackedPoints): Float64Array => points.map((value, index) => (index % 2 === 0 ? value / MILLISECONDS_PER_MINUTE : value));

/** Each stretch between neighbours of a history by itself, two points each. */
export const stretchesOf = (points: PackedPoints): PackedPoints[] =>
  Array.from({ length: points.length / 2 - 1 }, (_, index) => points.slice(2 * index, 2 * index + 4));

/** Share of each milestone at the end, from the solver with a tight tolerance, cut at every point and kink. */
export function trueShares(points: PackedPoints): number[] {
  return MILESTONES.map((rows) => stretchesOf(inMinutes(points)).reduce((sum, [t0 = NaN, c0 = NaN, t1 = NaN, c1 = NaN]) => sum + solvedShare(rows, (minute) => c0 + ((c1 - c0) * minute) / (t1 - t0), t1 - t0, passes(rows, c0, c1, t1 - t0)), 0));
}

/** The largest relative error. */
export const errorOf = (shares: ArrayLike<number>, truth: readonly number[]): number => Math.max(...truth.map((share, index) => Math.abs((shares[index] ?? NaN) / share - 1)));
