import { createRequire } from 'node:module';

/** What is used of ode45-cash-karp, an adaptive Runge-Kutta solver, which brings no type declarations. Its state is its own: set it, step it, read it. */
export interface RungeKuttaSolver {
  y: Float64Array;
  t: number;
  /** The next step it will try. */
  dt: number;
  /** One step, not beyond the limit; false when the limit is reached. */
  step(limit: number): boolean;
}

type Derivative = (slopes: Float64Array, y: Float64Array, t: number) => void;
interface Options {
  readonly tol: number;
  readonly verbose: boolean;
  /** What the error of a component is measured against. */
  readonly errorScaleFunction: () => number;
}
type Make = (y: Float64Array, derivative: Derivative, t: number, dt: number, options: Options) => RungeKuttaSolver;

const loaded: unknown = createRequire(import.meta.url)('ode45-cash-karp');
if (!isMake(loaded)) throw new Error('The package ode45-cash-karp is no function.');
const make = loaded;

/** The tolerance is one of the absolute error of a step. */
export const rungeKuttaSolver = (dimension: number, derivative: Derivative, tolerance: number): RungeKuttaSolver =>
  make(new Float64Array(dimension), derivative, 0, 1, { tol: tolerance, verbose: false, errorScaleFunction: () => 1 });

function isMake(value: unknown): value is Make {
  return typeof value === 'function';
}
