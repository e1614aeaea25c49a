import type { SheetRow } from '../../src/cure/card.js';
import { odeSolver } from './ode-solver.js';

const ICE_POINT = 273.15;
const TOLERANCE = 1e-11;

/** Shares per minute by the definition: ln(minutes) straight in 1/T between rows, 0 below, no bonus above. */
export function definedRate(rows: readonly SheetRow[], temperature: number): number {
  const sorted = [...rows].sort((one, other) => one.temperature - other.temperature);
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (first === undefined || last === undefined || temperature < first.temperature) return 0;
  for (const [index, hot] of sorted.entries()) {
    const cold = sorted[index - 1];
    if (cold === undefined || temperature > hot.temperature) continue;
    const [x, x0, x1] = [temperature, cold.temperature, hot.temperature].map((value) => 1 / (value + ICE_POINT));
    if (x === undefined || x0 === undefined || x1 === undefined) continue;
    return Math.exp(-(Math.log(cold.minutes) + ((x - x0) / (x1 - x0)) * (Math.log(hot.minutes) - Math.log(cold.minutes))));
  }
  return temperature <= first.temperature ? 1 / first.minutes : 1 / last.minutes;
}

/** Integral of the defined rate along a temperature course by the ODE solver, which restarts at every cut. */
export function solvedShare(rows: readonly SheetRow[], temperatureAt: (minute: number) => number, length: number, cuts: readonly number[] = []): number {
  const edges = [0, ...cuts.filter((cut) => cut > 0 && cut < length).sort((one, other) => one - other), length];
  return edges.slice(1).reduce((sum, to, index) => sum + solvedPart(rows, temperatureAt, edges[index] ?? 0, to), 0);
}

/** Inside a part the rate is smooth: its ends are taken from within, so that a jump belongs to one side only. */
function solvedPart(rows: readonly SheetRow[], temperatureAt: (minute: number) => number, from: number, to: number): number {
  const length = to - from;
  if (length <= 0) return 0;
  const inside = (part: number): number => from + length * Math.min(1 - 1e-13, Math.max(1e-13, part));
  const middle = definedRate(rows, temperatureAt(inside(0.5)));
  // Scaled to about 1, so that the tolerance is a relative one.
  const scale = middle > 0 ? middle : 1;
  const solver = odeSolver(1, TOLERANCE);
  solver.initialStepSize = 0.05;
  const { y } = solver.solve((part) => [definedRate(rows, temperatureAt(inside(part))) / scale], 0, [0], 1);
  return (y[0] ?? NaN) * scale * length;
}

/** When a straight line between two temperatures passes the rows. */
export const passes = (rows: readonly SheetRow[], from: number, to: number, length: number): number[] =>
  from === to ? [] : rows.map((row) => ((row.temperature - from) / (to - from)) * length);
