import type { PackedPoints } from '../../src/cure/temperature-point.js';
import { errorOf, historyOf, inMinutes, MILESTONES, stretchesOf, trueShares } from './history.js';
import { odexWith, rungeKutta, type Integrator } from './integrators.js';
import { quickRates } from './quick-rates.js';
import { inOneRun, restartedAt, type Forecaster, type Forecasting } from './solver-forecast.js';

export const LARGEST_ERROR = 1e-6;
export const RATES = quickRates(MILESTONES);

/** °C; between two of them every rate is smooth. */
const ROWS = Float64Array.from(new Set(MILESTONES.flatMap((rows) => rows.map((row) => row.temperature)))).sort();
const NO_ROWS = new Float64Array(0);

interface Setting {
  readonly name: string;
  readonly integrator: Integrator;
  /** Temperatures at which it begins anew, beside the points; null: it begins only once. */
  readonly rows: Float64Array | null;
}

/** A solver at the loosest tolerance with which it is as exact as asked. */
export interface Contestant {
  readonly name: string;
  readonly integrator: Integrator;
  readonly rows: Float64Array;
  readonly tolerance: number;
  readonly error: number;
  readonly forecast: Forecaster;
}

const SOLVERS: readonly Omit<Setting, 'rows'>[] = [
  { name: 'odex', integrator: odexWith(9) },
  { name: 'odex with few columns', integrator: odexWith(3) },
  { name: 'ode45-cash-karp', integrator: rungeKutta },
];
const RESTARTED: readonly Setting[] = SOLVERS.flatMap((solver) => [
  { ...solver, name: `${solver.name}, restarted`, rows: NO_ROWS },
  { ...solver, name: `${solver.name}, at rows too`, rows: ROWS },
]);
const IN_ONE_RUN: readonly Setting[] = SOLVERS.map((solver) => ({ ...solver, name: `${solver.name}, one run`, rows: null }));

/** Nobody tunes a tolerance for each joint: one that holds for some histories of the kind. */
const SEEDS = [7, 1, 2, 3, 4, 5];

/** As exact as asked over whole histories. */
export const forecasters = (points: number): Contestant[] => tuned([...RESTARTED, ...IN_ONE_RUN], SEEDS.map((seed) => historyOf(points, seed)));

/** As exact as asked about each single stretch that a new reading ends. */
export const steppers = (readings: PackedPoints): Contestant[] => tuned(RESTARTED, stretchesOf(readings));

function tuned(settings: readonly Setting[], histories: readonly PackedPoints[]): Contestant[] {
  const known = histories.map((points) => ({ points: inMinutes(points), truth: trueShares(points) }));
  return settings.flatMap(({ name, integrator, rows }) => {
    const forecasting: Forecasting = rows === null ? inOneRun : restartedAt(rows);
    for (let digits = 0; digits <= 13; digits += 0.5) {
      const tolerance = 10 ** -digits;
      const forecast = forecasting(integrator, MILESTONES.length, RATES, tolerance);
      const error = largestError(forecast, known);
      if (error <= LARGEST_ERROR) return [{ name, integrator, rows: rows ?? NO_ROWS, tolerance, error, forecast }];
    }
    return [];
  });
}

/** Stops at the first history that shows more than is allowed. */
function largestError(forecast: Forecaster, known: readonly { readonly points: Float64Array; readonly truth: readonly number[] }[]): number {
  let largest = 0;
  for (const { points, truth } of known) {
    largest = Math.max(largest, errorOf(forecast(points).shares, truth));
    if (!(largest <= LARGEST_ERROR)) return Infinity;
  }
  return largest;
}
