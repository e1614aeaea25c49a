import type { OpenPeriod } from '../cure/air.js';
import { earlier, instant, later, minutes, MILLISECONDS_PER_MINUTE, minus, minutesBetween, plus, roundDownToMinute, roundUpToMinute, type Instant, type Minutes } from '../cure/units.js';

type InTime = (start: Instant) => boolean;

interface Stretch {
  readonly from: Instant;
  readonly to: Instant;
}

const MINUTE = minutes(1);

/**
 * The latest whole minute within opening hours, not after `by`, from which it is ready in time; null: none.
 * Between two `cuts` a later start must never be ready earlier, so that halving finds it.
 */
export function latestByHalving(periods: readonly OpenPeriod[], by: Instant, cuts: readonly Instant[], inTime: InTime): Instant | null {
  for (const period of [...periods].reverse()) {
    for (const stretch of pieces(startsIn(period, by), cuts).reverse()) {
      if (inTime(stretch.from)) return lastIn(stretch, inTime);
    }
  }
  return null;
}

/** The same where a later start may be ready earlier: minute by minute, on days from which so many open minutes are left. */
export function latestByTrying(periods: readonly OpenPeriod[], by: Instant, needed: Minutes, inTime: InTime): Instant | null {
  let left = 0;
  for (const period of [...periods].reverse()) {
    const { from, to } = startsIn(period, by);
    left += Math.max(0, minutesBetween(period.opens, earlier(period.closes, by)));
    if (left < needed) continue;
    for (let start = to; start >= from; start = minus(start, MINUTE)) if (inTime(start)) return start;
  }
  return null;
}

/** Whole minutes at which a panel can be closed: the shop is open. */
const startsIn = ({ opens, closes }: OpenPeriod, by: Instant): Stretch => ({
  from: roundUpToMinute(opens),
  to: earlier(minus(roundUpToMinute(closes), MINUTE), roundDownToMinute(by)),
});

/** What happens at a cut may count from that very minute or from the one after. */
function pieces({ from, to }: Stretch, cuts: readonly Instant[]): Stretch[] {
  const edges = cuts.flatMap((cut) => [roundUpToMinute(cut), plus(roundUpToMinute(cut), MINUTE)]);
  const starts = [...new Set([from, ...edges.filter((edge) => edge > from && edge <= to)])].sort((one, other) => one - other);
  return from > to ? [] : starts.map((start, index) => ({ from: start, to: minus(starts[index + 1] ?? plus(to, MINUTE), MINUTE) }));
}

function lastIn({ from, to }: Stretch, inTime: InTime): Instant {
  let [yes, no] = [0, Math.round(minutesBetween(from, to)) + 1];
  const at = (offset: number): Instant => instant(from + offset * MILLISECONDS_PER_MINUTE);
  while (no - yes > 1) {
    const middle = Math.floor((yes + no) / 2);
    if (inTime(at(middle))) yes = middle;
    else no = middle;
  }
  return later(from, at(yes));
}
