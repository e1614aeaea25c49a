import { odeSolver } from '../support/ode-solver.js';
import { rungeKuttaSolver } from '../support/runge-kutta-solver.js';

/** Rates of all milestones at a minute, written into an array. */
export type Derivative = (minute: number, into: Float64Array) => void;
/** Takes the shares from one minute to another, in place. */
export type Integrate = (from: number, to: number, shares: Float64Array) => void;
export type Integrator = (dimension: number, derivative: Derivative, tolerance: number) => Integrate;

/** `columns`: how far it may extrapolate; few are quicker to set up, many take longer steps. The first step it tries is the whole way. */
export const odexWith = (columns: number): Integrator => (dimension, derivative, tolerance) => {
  const solver = odeSolver(dimension, tolerance);
  solver.maxExtrapolationColumns = columns;
  const rates = new Float64Array(dimension);
  const slope = (minute: number): Float64Array => {
    derivative(minute, rates);
    return rates;
  };
  return (from, to, shares) => {
    solver.initialStepSize = to - from;
    shares.set(solver.solve(slope, from, [...shares], to).y);
  };
};

/** One solver object for all restarts; the first step it tries is the whole way. */
export const rungeKutta: Integrator = (dimension, derivative, tolerance) => {
  const solver = rungeKuttaSolver(dimension, (slopes, _shares, minute) => {
    derivative(minute, slopes);
  }, tolerance);
  return (from, to, shares) => {
    solver.y = shares;
    solver.t = from;
    solver.dt = to - from;
    while (solver.step(to));
  };
};
