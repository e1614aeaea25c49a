import type { SheetRow } from '../../src/cure/card.js';
import { celsius, kelvinFromCelsius, type Celsius } from '../../src/cure/units.js';
import { odeSolver, type OdeSolver, type OnStep } from '../support/ode-solver.js';

/** The rate as a caller of a solver would write it for speed: logarithms of the rows are taken once. */
export function quickRate(rows: readonly SheetRow[]): (temperature: Celsius) => number {
  const knots = rows.map((row) => ({ temperature: row.temperature, inverse: 1 / kelvinFromCelsius(row.temperature), log: -Math.log(row.minutes) }));
  return (temperature) => {
    for (const [index, hot] of knots.entries()) {
      if (temperature > hot.temperature) continue;
      const cold = knots[index - 1];
      if (cold === undefined) return temperature === hot.temperature ? Math.exp(hot.log) : 0;
      return Math.exp(cold.log + ((1 / kelvinFromCelsius(temperature) - cold.inverse) / (hot.inverse - cold.inverse)) * (hot.log - cold.log));
    }
    return Math.exp(knots.at(-1)?.log ?? -Infinity);
  };
}

/** Minutes. */
const FIRST_STEP = 60;
const HORIZON = 60 * 24 * 60;

export interface Solved {
  readonly shares: readonly number[];
  /** Minutes, or NaN where the share is not full yet. */
  readonly dues: readonly number[];
}

/** Times and temperatures, one after the other. */
export type Packed = Float64Array;

/** All milestones as one system. `restart`: at every point; otherwise over the whole history in one go. */
export function solverForecast(rates: readonly ((temperature: Celsius) => number)[], packed: Packed, tolerance: number, restart: boolean): Solved {
  const solver = odeSolver(rates.length, tolerance);
  const last = packed.length / 2 - 1;
  const dues = rates.map(() => NaN);
  let shares: readonly number[] = rates.map(() => 0);
  let index = 0;
  const slope = (time: number): number[] => {
    while (index < last - 1 && time > at(packed, 2 * index + 2)) index += 1;
    while (index > 0 && time < at(packed, 2 * index)) index -= 1;
    const temperature = temperatureAt(packed, index, time);
    return rates.map((rate) => rate(temperature));
  };
  for (let part = 0; part < (restart ? last : 1); part += 1) {
    const [from, to] = [at(packed, 2 * part), at(packed, 2 * (restart ? part + 1 : last))];
    const before = shares;
    solver.initialStepSize = restart ? to - from : 1;
    const solve = (onStep?: OnStep): readonly number[] => solver.solve(slope, from, before, to, onStep).y;
    shares = solve();
    if (!shares.some((share, milestone) => share >= 1 && Number.isNaN(dues[milestone]))) continue;
    // Dense output costs a solver much, so only a stretch in which something becomes due is solved with it.
    solver.denseOutput = true;
    solve((_step, begin, now, y, dense) => {
      for (const [milestone, share] of y.entries()) if (share >= 1 && Number.isNaN(dues[milestone])) dues[milestone] = crossing((time) => dense(milestone, time), begin, now);
      return undefined;
    });
    solver.denseOutput = false;
  }
  return { shares, dues };
}

/** One more stretch on top of what is known. */
export function solverStep(solver: OdeSolver, rates: readonly ((temperature: Celsius) => number)[], shares: readonly number[], packed: Packed): readonly number[] {
  const [from, to] = [at(packed, 0), at(packed, 2)];
  solver.initialStepSize = to - from;
  return solver.solve((time) => rates.map((rate) => rate(temperatureAt(packed, 0, time))), from, shares, to).y;
}

/** From the end of a stretch on to where everything is due, if its last temperature is held. */
export function solverTail(solver: OdeSolver, rates: readonly ((temperature: Celsius) => number)[], shares: readonly number[], packed: Packed): readonly number[] {
  const [from, held] = [at(packed, 2), celsius(at(packed, 3))];
  const dues = rates.map(() => NaN);
  solver.initialStepSize = FIRST_STEP;
  solver.denseOutput = true;
  solver.solve(() => rates.map((rate) => rate(held)), from, shares, from + HORIZON, (_step, begin, now, y, dense) => {
    for (const [milestone, share] of y.entries()) if (share >= 1 && Number.isNaN(dues[milestone])) dues[milestone] = crossing((time) => dense(milestone, time), begin, now);
    return y.some((share) => share < 1) ? undefined : false;
  });
  solver.denseOutput = false;
  return dues;
}

function crossing(share: (time: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let round = 0; round < 40; round += 1) {
    const middle = (low + high) / 2;
    if (share(middle) < 1) low = middle;
    else high = middle;
  }
  return high;
}

function temperatureAt(packed: Packed, index: number, time: number): Celsius {
  const [t0, c0, t1, c1] = [at(packed, 2 * index), at(packed, 2 * index + 1), at(packed, 2 * index + 2), at(packed, 2 * index + 3)];
  return celsius(c0 + ((c1 - c0) * (time - t0)) / (t1 - t0));
}

const at = (packed: Packed, index: number): number => packed[index] ?? NaN;
