import { odeSolver } from '../support/ode-solver.js';
import type { Rates } from './quick-rates.js';
import { crossing } from './solver-forecast.js';

/** Minutes. */
const FIRST_STEP = 60;
const HORIZON = 60 * 24 * 60;

/** Minutes until each share is full while the temperature stays, found by odex itself: stepped on, with dense output to say when. */
export function odexHold(milestones: number, rates: Rates, tolerance: number): (temperature: number, shares: Float64Array) => Float64Array {
  const solver = odeSolver(milestones, tolerance);
  solver.initialStepSize = FIRST_STEP;
  solver.denseOutput = true;
  const slopes: number[] = Array.from({ length: milestones }, () => 0);
  const dues = new Float64Array(milestones);
  return (temperature, shares) => {
    dues.fill(NaN);
    const slope = (): number[] => {
      rates(temperature, slopes);
      return slopes;
    };
    solver.solve(slope, 0, [...shares], HORIZON, (_step, before, now, y, dense) => {
      let full = true;
      for (const [milestone, share] of y.entries()) {
        if (share >= 1 && Number.isNaN(dues[milestone])) dues[milestone] = crossing(before, now, dense(milestone, before), share, (minute) => dense(milestone, minute));
        full &&= share >= 1;
      }
      return full ? false : undefined;
    });
    return dues;
  };
}
