import { integralAt, meanRateOn, rateAt } from './grid-values.js';
import type { RateGrid } from './rate-grid.js';
import { reachedAfter } from './reached-after.js';
import { celsius, minutes, minutesBetween, plus, type Celsius, type Instant, type Minutes } from './units.js';

/** A straight change of temperature, and R of one milestone at its ends. */
export interface Ramp {
  readonly from: Instant;
  readonly to: Instant;
  readonly begin: Celsius;
  readonly end: Celsius;
  readonly before: number;
  readonly here: number;
}

const ROUNDS = 12;
/** Of a ramp. The next step of Newton's method would be about the square of it. */
const CLOSE_ENOUGH = 1e-8;

/** When a ramp has earned a part, 0 to 1, of what it earns in all. */
export function reachedOnRamp(grid: RateGrid, lane: number, ramp: Ramp, part: number): Instant {
  const length = minutesBetween(ramp.from, ramp.to);
  const found = newton(grid, lane, ramp, part);
  return plus(ramp.from, found === null ? searched(grid, lane, ramp, length, part) : minutes(found * length));
}

/** Newton's method on R, without anything made on the way; null where it leaves the ramp or does not settle: at a bend, or where the temperature hardly changes. */
function newton(grid: RateGrid, lane: number, { begin, end, before, here }: Ramp, part: number): number | null {
  const change = end - begin;
  const target = before + part * (here - before);
  let guess = part;
  for (let round = 0; round < ROUNDS; round += 1) {
    const temperature = celsius(begin + guess * change);
    const step = (target - integralAt(grid, lane, temperature)) / (change * rateAt(grid, lane, temperature));
    guess += step;
    if (!(guess >= 0 && guess <= 1)) return null;
    if (Math.abs(step) <= CLOSE_ENOUGH) return guess;
  }
  return null;
}

function searched(grid: RateGrid, lane: number, { begin, end, before }: Ramp, length: Minutes, part: number): Minutes {
  const temperatureAt = (after: Minutes): Celsius => celsius(begin + ((end - begin) * after) / length);
  const earned = (after: Minutes): number => after * meanRateOn(grid, lane, begin, temperatureAt(after), before, integralAt(grid, lane, temperatureAt(after)));
  return reachedAfter({ earned, rate: (after) => rateAt(grid, lane, temperatureAt(after)) }, length, part * earned(length));
}
