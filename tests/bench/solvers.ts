import type { PackedPoints } from '../../src/cure/progress-lines.js';
import { errorOf, historyOf, inMinutes, MILESTONES, stretchesOf, trueShares } from './history.js';
import { odexWith, rungeKutta, type Integrator } from './integrators.js';
import { quickRates } from './quick-rates.js';
import { inOneRun, restarted, type Forecaster, type Forecasting } from './solver-forecast.js';

export const LARGEST_ERROR = 1e-6;
export const RATES = quickRates(MILESTONES);

interface Setting {
  readonly name: string;
  readonly integrator: Integrator;
  readonly forecasting: Forecasting;
}

/** A solver at the loosest tolerance with which it is as exact as asked. */
export interface Contestant {
  readonly name: string;
  readonly tolerance: number;
  readonly error: number;
  readonly forecast: Forecaster;
}

const RESTARTED: readonly Setting[] = [
  { name: 'odex, restarted at every point', integrator: odexWith(9), forecasting: restarted },
  { name: 'odex, restarted, few columns', integrator: odexWith(3), forecasting: restarted },
  { name: 'ode45-cash-karp, restarted', integrator: rungeKutta, forecasting: restarted },
];
const IN_ONE_RUN: readonly Setting[] = [
  { name: 'odex, one run', integrator: odexWith(9), forecasting: inOneRun },
  { name: 'odex, one run, few columns', integrator: odexWith(3), forecasting: inOneRun },
  { name: 'ode45-cash-karp, one run', integrator: rungeKutta, forecasting: inOneRun },
];

/** Nobody tunes a tolerance for each joint: one that holds for some histories of the kind. */
const SEEDS = [7, 1, 2, 3, 4, 5];

/** As exact as asked over whole histories. */
export const forecasters = (points: number): Contestant[] => tuned([...RESTARTED, ...IN_ONE_RUN], SEEDS.map((seed) => historyOf(points, seed)));

/** As exact as asked about each single stretch that a new reading ends. */
export const steppers = (readings: number): Contestant[] => tuned(RESTARTED, stretchesOf(historyOf(readings + 1)));

function tuned(settings: readonly Setting[], histories: readonly PackedPoints[]): Contestant[] {
  const known = histories.map((points) => ({ points: inMinutes(points), truth: trueShares(points) }));
  return settings.flatMap(({ name, integrator, forecasting }) => {
    for (let digits = 0; digits <= 13; digits += 0.5) {
      const tolerance = 10 ** -digits;
      const forecast = forecasting(integrator, MILESTONES.length, RATES, tolerance);
      const error = largestError(forecast, known);
      if (error <= LARGEST_ERROR) return [{ name, tolerance, error, forecast }];
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
