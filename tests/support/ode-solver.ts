import { createRequire } from 'node:module';

/** What is used of odex, Hairer's ODEX in JavaScript, which brings no type declarations that a strict compiler takes. */
export interface OdeSolver {
  absoluteTolerance: number;
  relativeTolerance: number;
  initialStepSize: number;
  maxSteps: number;
  maxExtrapolationColumns: number;
  denseOutput: boolean;
  solve(derivative: (x: number, y: readonly number[]) => ArrayLike<number>, from: number, begin: readonly number[], to: number, onStep?: OnStep): { readonly y: readonly number[] };
}
export type OnStep = (step: number, before: number, x: number, y: readonly number[], dense: (component: number, x: number) => number) => boolean | undefined;

interface OdexModule {
  readonly Solver: new (dimension: number) => OdeSolver;
}

const loaded: unknown = createRequire(import.meta.url)('odex');
if (!isOdex(loaded)) throw new Error('The package odex has no Solver.');
const { Solver } = loaded;

export function odeSolver(dimension: number, tolerance: number): OdeSolver {
  const solver = new Solver(dimension);
  solver.absoluteTolerance = tolerance;
  solver.relativeTolerance = tolerance;
  solver.maxSteps = 1_000_000;
  return solver;
}

function isOdex(value: unknown): value is OdexModule {
  return typeof value === 'object' && value !== null && 'Solver' in value && typeof value.Solver === 'function';
}
