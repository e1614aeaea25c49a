import { odeSolver } from '../support/ode-solver.js';
import { rungeKuttaSolver } from '../support/runge-kutta-solver.js';
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
  const slopes = new Float64Array(milestones);
  const dues = new Float64Array(milestones);
  return (temperature, shares) => {
    dues.fill(NaN);
    const slope = (): Float64Array => {
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

/** The same by ode45-cash-karp, which has no dense output: a step in which a share becomes full is taken again, up to where it is. */
export function rungeKuttaHold(milestones: number, rates: Rates, tolerance: number): (temperature: number, shares: Float64Array) => Float64Array {
  let held = NaN;
  const solver = rungeKuttaSolver(milestones, (slopes) => {
    rates(held, slopes);
  }, tolerance);
  const [begin, end] = [new Float64Array(milestones), new Float64Array(milestones)];
  const dues = new Float64Array(milestones);
  const stepTo = (from: number, to: number, into: Float64Array): void => {
    into.set(begin);
    solver.y = into;
    solver.t = from;
    solver.dt = to - from;
    while (solver.step(to));
  };
  const trial = new Float64Array(milestones);
  return (temperature, shares) => {
    held = temperature;
    dues.fill(NaN);
    begin.set(shares);
    // The error of a steady rate is nothing: each step may be as long as all before it.
    for (let [from, to] = [0, FIRST_STEP]; from < HORIZON && dues.some(Number.isNaN); [from, to] = [to, 2 * to]) {
      stepTo(from, to, end);
      for (const [milestone, share] of end.entries()) {
        if (share < 1 || !Number.isNaN(dues[milestone])) continue;
        dues[milestone] = crossing(from, to, begin[milestone] ?? NaN, share, (minute) => {
          stepTo(from, minute, trial);
          return trial[milestone] ?? NaN;
        });
      }
      begin.set(end);
    }
    return dues;
  };
}
