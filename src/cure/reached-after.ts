import { minutes, type Minutes } from './units.js';

/** From here on every other round halves the bracket, so that the search ends whatever the rate does. */
const PATIENCE = 8;
const MOST_ROUNDS = 120;
/** Minutes. */
const CLOSE_ENOUGH = 1e-9;

/** A stretch as a sum that never falls: what it earned after some minutes, and how fast it earns then. */
export interface Earning {
  readonly earned: (after: Minutes) => number;
  readonly rate: (after: Minutes) => number;
}

/** The first minute at which a stretch has earned `needed`; it has done so by `longest`. Newton's method, kept inside a shrinking bracket. */
export function reachedAfter(earning: Earning, longest: Minutes, needed: number): Minutes {
  let low = 0;
  let high: number = longest;
  let guess = low;
  let earned = 0;
  for (let round = 0; round < MOST_ROUNDS && high - low > CLOSE_ENOUGH; round += 1) {
    const rate = earning.rate(minutes(guess));
    const step = guess + (needed - earned) / rate;
    const inside = (round < PATIENCE || round % 2 === 0) && rate > 0 && step > low && step < high;
    const next = inside ? step : (low + high) / 2;
    const done = Math.abs(next - guess) <= CLOSE_ENOUGH && inside;
    guess = next;
    if (done) return minutes(guess);
    earned = earning.earned(minutes(guess));
    if (earned < needed) low = guess;
    else high = guess;
  }
  return minutes(high);
}
