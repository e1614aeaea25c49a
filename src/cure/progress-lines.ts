import { integralAt, meanRateOn, rateAt } from './grid-values.js';
import type { RateGrid } from './rate-grid.js';
import { reachedOnRamp } from './reached-on-ramp.js';
import type { PackedPoints, TemperaturePoint } from './temperature-point.js';
import { celsius, instant, type Celsius, type Instant } from './units.js';
import { step, walk, type Marks, type Sums } from './walk.js';

/**
 * The running sums of up to three milestones over a temperature history, up to its last point. They grow in place and hold
 * nothing but their end, so one more point costs the same after ten points and after ten thousand.
 */
export interface ProgressLines {
  readonly grid: RateGrid;
  readonly sums: Sums;
  readonly marks: Marks;
  /** Exact moments at which the shares reached 1, not rounded; Infinity: not yet. */
  readonly dues: number[];
}

// Places in `Sums` and `Marks`; as in `walk`, constants of this file.
const LANES = 3;
const INTEGRALS = 3;
const RATES = 3;
const MOMENT = 6;
const WARMTH = 7;

/** Rounding of a sum of shares. */
const DUST = 1e-12;
const FULL = 1 - DUST;

/** Lines of one point; `earned` is the share of each milestone from before it; one that is full already never becomes so again. */
export function beginLines(grid: RateGrid, first: TemperaturePoint, earned = 0): ProgressLines {
  // Plain arrays are quicker to make than typed ones; a fraction in each place makes them arrays of doubles from the first.
  const sums = [0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5];
  const marks = [0.5, 0.5, 0.5, 0.5, 0.5, 0.5];
  const dues = [0.5, 0.5, 0.5];
  for (let lane = 0; lane < LANES; lane += 1) {
    const used = lane < grid.tables.length;
    sums[lane] = used ? earned : 0;
    sums[INTEGRALS + lane] = integralAt(grid, lane, first.temperature);
    marks[lane] = used && earned < FULL ? FULL : Infinity;
    marks[RATES + lane] = rateAt(grid, lane, first.temperature);
    dues[lane] = Infinity;
  }
  sums[MOMENT] = first.at;
  sums[WARMTH] = first.temperature;
  return { grid, sums, marks, dues };
}

/** Goes on along the points from `first` to before `end`, places in the packed array; none earlier than the last point. */
export function goAlong(lines: ProgressLines, points: PackedPoints, first = 0, end = points.length): void {
  const { grid, sums, marks } = lines;
  if (first === end - 2 && step(grid, sums, marks, points, first)) return;
  let index = walk(grid, sums, marks, points, first, end);
  while (index < end) {
    crossTo(lines, points[index] ?? NaN, celsius(points[index + 1] ?? NaN));
    index = walk(grid, sums, marks, points, index + 2, end);
  }
  for (let lane = 0; lane < grid.tables.length; lane += 1) marks[RATES + lane] = rateAt(grid, lane, lastTemperature(lines));
}

/** To a single point, whatever it needs. */
function crossTo({ grid, sums, marks, dues }: ProgressLines, now: number, temperature: Celsius): void {
  const time = at(sums, MOMENT);
  if (!(now >= time)) throw new RangeError(`A temperature history goes forward in time: ${now} stands after ${time}.`);
  const begin = celsius(at(sums, WARMTH));
  for (let lane = 0; lane < grid.tables.length; lane += 1) {
    const before = at(sums, INTEGRALS + lane);
    const here = integralAt(grid, lane, temperature);
    const earned = now === time ? 0 : (now - time) * meanRateOn(grid, lane, begin, temperature, before, here);
    const share = at(sums, lane);
    if (share + earned >= at(marks, lane)) {
      dues[lane] = reachedOnRamp(grid, lane, { from: instant(time), to: instant(now), begin, end: temperature, before, here }, (1 - share) / earned);
      marks[lane] = Infinity;
    }
    sums[lane] = share + earned;
    sums[INTEGRALS + lane] = here;
  }
  sums[MOMENT] = now;
  sums[WARMTH] = temperature;
}

/** Share of a milestone up to the last point; goes on above 1. */
export const shareOf = ({ sums }: ProgressLines, lane = 0): number => at(sums, lane);

/** When the share of a milestone reached 1; Infinity: not yet. */
export const dueOf = ({ dues }: ProgressLines, lane = 0): Instant => instant(at(dues, lane));

/** When the share of a milestone reaches 1 (or reached it) if the joint stays as it is from the last point on; Infinity: never. */
export function dueIfHeld({ sums, marks, dues }: ProgressLines, lane = 0): Instant {
  const due = at(dues, lane);
  return instant(due < Infinity ? due : at(sums, MOMENT) + (1 - at(sums, lane)) / at(marks, RATES + lane));
}

export const lastPoint = (lines: ProgressLines): TemperaturePoint => ({ at: instant(at(lines.sums, MOMENT)), temperature: lastTemperature(lines) });

const lastTemperature = ({ sums }: ProgressLines): Celsius => celsius(at(sums, WARMTH));

const at = (numbers: readonly number[], index: number): number => numbers[index] ?? NaN;
