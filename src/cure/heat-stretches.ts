import { afterHeatEvent, NO_HEAT, type HeatState } from './heat.js';
import type { HeatEvent } from './history.js';
import { countOver, lowestOver, type Span, type ValueSpan } from './span-sums.js';
import { celsius, colder, earlier, type Celsius, type Instant } from './units.js';

/** How the time between two readings counts: strength takes the colder of the two, a dwell the earlier one (dips start when read). */
export type BetweenReadings = 'colder' | 'previous';

/** What the joint was after a heat event, until the next, with all that is known since. */
export interface HeatStretch {
  readonly from: Instant;
  /** null: the air counts. */
  readonly reading: Celsius | null;
  /** No warmer than this: a later, colder reading showed that the joint was not as warm as believed. */
  readonly cap: Celsius | null;
}

/**
 * Folds the heat events (in order of time) into stretches. A reading reaches back and caps everything since the reading
 * before it, or since the heat last changed hands (off, back on, closing): what was before is another regime.
 */
export function heatStretches(events: readonly HeatEvent[], start: Instant, between: BetweenReadings): HeatStretch[] {
  let state: HeatState = NO_HEAT;
  // A panel that moved has its heat from before: that goes on, and a later reading caps it as well.
  const begin = earlier(start, events[0]?.at ?? start);
  const stretches: HeatStretch[] = [{ from: begin, reading: null, cap: null }];
  const caps: ValueSpan[] = [];
  const lost: Span[] = [];
  let capsFrom = begin;
  /** Without heat the joint is no warmer than it was read, until the night makes a new start. */
  let lastRead: Celsius | null = null;
  for (const event of events) {
    const before = state;
    state = afterHeatEvent(state, event);
    if (event.kind === 'lamp-found-off' && before.lamp !== 'off') {
      capsFrom = before.lastSign ?? begin;
      lost.push({ first: firstSince(stretches, capsFrom), last: stretches.length - 1 });
    }
    if (event.kind === 'reading') lastRead = event.value;
    if (event.kind === 'closing') lastRead = null;
    if (event.kind === 'reading' && between === 'colder') caps.push({ first: firstSince(stretches, capsFrom), last: stretches.length - 1, value: event.value });
    stretches.push({ from: event.at, reading: state.counted, cap: state.counted === null ? lastRead : null });
    if (event.kind === 'reading' || event.kind === 'closing' || changesRegime(before, state)) capsFrom = event.at;
  }
  return inHindsight(stretches, caps, lost);
}

/** Heat that stops or comes back; a first lamp and a doubt are no new regime. */
const changesRegime = (before: HeatState, after: HeatState): boolean =>
  before.lamp !== after.lamp && (after.lamp === 'off' || (before.lamp !== 'never' && after.lamp === 'on'));

/** The first stretch that does not begin before a moment. */
function firstSince(stretches: readonly HeatStretch[], since: Instant): number {
  let [low, high] = [0, stretches.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((stretches[middle]?.from ?? Infinity) < since) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Where the heat is lost the air counts, and what was read stays an upper limit. */
function inHindsight(stretches: readonly HeatStretch[], caps: readonly ValueSpan[], lost: readonly Span[]): HeatStretch[] {
  const lowest = lowestOver(stretches.length, caps);
  const without = countOver(stretches.length, lost);
  return stretches.map(({ from, reading, cap }, index) => {
    const value = lowest[index] ?? Infinity;
    const later = value === Infinity ? cap : lowestOf(cap, celsius(value));
    return reading === null || (without[index] ?? 0) === 0 ? { from, reading, cap: later } : { from, reading: null, cap: lowestOf(later, reading) };
  });
}

/** The colder one, where the first may be unknown. */
export const lowestOf = (cap: Celsius | null, value: Celsius): Celsius => (cap === null ? value : colder(cap, value));
