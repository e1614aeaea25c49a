import type { Integrator } from './integrators.js';
import type { Rates } from './quick-rates.js';

export interface Solved {
  readonly shares: Float64Array;
  /** Minutes; NaN: not due yet, or not asked. */
  readonly dues: Float64Array;
}

/** Minutes and temperatures, one after the other. The same arrays are handed out again and again. */
export type Forecaster = (points: Float64Array) => Solved;
export type Forecasting = (integrator: Integrator, milestones: number, rates: Rates, tolerance: number) => Forecaster;

/** Takes the shares along one stretch, that to the point at `index`, in place; `until` cuts it short. */
export type Stretch = (points: Float64Array, index: number, shares: Float64Array, until?: number) => void;

/**
 * A solver that begins anew at every point, so that it meets no bend but those of the rates; with rows (°C, coldest first) it begins
 * anew at these as well and meets none.
 */
export function stretchwise(integrator: Integrator, milestones: number, rates: Rates, tolerance: number, rows: Float64Array = NO_ROWS): Stretch {
  let from = 0.5;
  let begin = 0.5;
  let perMinute = 0.5;
  const integrate = integrator(milestones, (minute, into) => {
    rates(begin + perMinute * (minute - from), into);
  }, tolerance);
  return (points, index, shares, until = at(points, index)) => {
    from = at(points, index - 2);
    begin = at(points, index - 1);
    perMinute = (at(points, index + 1) - begin) / (at(points, index) - from);
    let minute = from;
    for (let count = 0; count < rows.length; count += 1) {
      const row = at(rows, perMinute > 0 ? count : rows.length - 1 - count);
      const passed = from + (row - begin) / perMinute;
      if (passed >= until) break;
      if (passed <= minute) continue;
      integrate(minute, passed, shares);
      minute = passed;
    }
    integrate(minute, until, shares);
  };
}

const NO_ROWS = new Float64Array(0);

/** Restarted at every point, perhaps at rows too. */
export const restartedAt = (rows: Float64Array): Forecasting => (integrator, milestones, rates, tolerance) => {
  const solved = { shares: new Float64Array(milestones), dues: new Float64Array(milestones) };
  const { shares, dues } = solved;
  const [before, trial] = [new Float64Array(milestones), new Float64Array(milestones)];
  const along = stretchwise(integrator, milestones, rates, tolerance, rows);
  return (points) => {
    shares.fill(0);
    dues.fill(NaN);
    for (let index = 2; index < points.length; index += 2) {
      before.set(shares);
      along(points, index, shares);
      for (let milestone = 0; milestone < milestones; milestone += 1) {
        if (at(before, milestone) >= 1 || at(shares, milestone) < 1) continue;
        dues[milestone] = crossing(at(points, index - 2), at(points, index), at(before, milestone), at(shares, milestone), (minute) => {
          trial.set(before);
          along(points, index, trial, minute);
          return at(trial, milestone);
        });
      }
    }
    return solved;
  };
};

/** The whole history in one go, shares only. */
export const inOneRun: Forecasting = (integrator, milestones, rates, tolerance) => {
  const solved = { shares: new Float64Array(milestones), dues: new Float64Array(milestones).fill(NaN) };
  let history: Float64Array = new Float64Array(0);
  let index = 2;
  const integrate = integrator(milestones, (minute, into) => {
    while (index < history.length - 2 && minute > at(history, index)) index += 2;
    while (index > 2 && minute < at(history, index - 2)) index -= 2;
    const [from, begin, to, end] = [at(history, index - 2), at(history, index - 1), at(history, index), at(history, index + 1)];
    rates(begin + ((end - begin) * (minute - from)) / (to - from), into);
  }, tolerance);
  return (points) => {
    history = points;
    index = 2;
    solved.shares.fill(0);
    integrate(at(points, 0), at(points, points.length - 2), solved.shares);
    return solved;
  };
};

/** Minutes. */
const CLOSE_ENOUGH = 1e-7;

/** The minute at which a share is full that is not so at first and is at last: false position; an end that stays twice counts half. */
export function crossing(from: number, to: number, first: number, last: number, shareAt: (minute: number) => number): number {
  let [low, high, under, over] = [from, to, first - 1, last - 1];
  let stays: 'low' | 'high' | null = null;
  let guess = to;
  for (let round = 0; round < 60; round += 1) {
    const next = (low * over - high * under) / (over - under);
    if (Math.abs(next - guess) < CLOSE_ENOUGH) return next;
    guess = next;
    const off = shareAt(guess) - 1;
    if (off < 0) {
      [low, under] = [guess, off];
      if (stays === 'high') over /= 2;
      stays = 'high';
    } else {
      [high, over] = [guess, off];
      if (stays === 'low') under /= 2;
      stays = 'low';
    }
  }
  return guess;
}

const at = (numbers: Float64Array, index: number): number => numbers[index] ?? NaN;
