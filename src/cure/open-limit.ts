import type { AirStep } from './air.js';
import type { MaterialCard, OpenTime } from './card.js';
import { openMinutesAt, shortestMinutes } from './rows.js';
import { earlier, hotter, later, plus, roundDownToMinute, type Celsius, type Instant, type Minutes } from './units.js';

/** Latest minute to close the panel. */
export type OpenLimit =
  | { readonly kind: 'none' }
  /** From `at` on hotter than the hottest row of the sheet: do not start; what is open is past its limit. */
  | { readonly kind: 'too hot'; readonly at: Instant; readonly temperature: Celsius }
  | { readonly kind: 'limit'; readonly at: Instant; readonly minutes: Minutes; readonly temperature: Celsius | null };

/** What is known about the paste: air on the hot side, readings of the joint; nothing after `until` counts (closed or last moved). */
export interface OpenClock {
  readonly pasted: Instant;
  readonly until: Instant | null;
  readonly air: readonly AirStep[];
  readonly readings: readonly { readonly at: Instant; readonly value: Celsius }[];
}

/**
 * The open limit counts from the first paste out of the mixer and errs early (rule R3): the hottest temperature
 * known between paste and limit, the next hotter row, rounded down. Unknown air counts as the hottest row.
 */
export function openLimit(card: MaterialCard, { pasted, until, air, readings }: OpenClock): OpenLimit {
  if (card.openTime === null) return { kind: 'none' };
  const known = [...air.map((step) => ({ at: step.from, value: step.temperature })), ...readings.filter((reading) => reading.at >= pasted)]
    .filter(({ at }) => until === null || at <= until)
    .sort((a, b) => a.at - b.at);
  let limit = limitAt(card.openTime, pasted, pasted, null);
  let hottest: Celsius | null = null;
  for (const { at, value } of known) {
    if (limit.kind !== 'limit') break;
    if (value === null || (at > pasted && at >= limit.at)) continue;
    hottest = hottest === null ? value : hotter(hottest, value);
    limit = limitAt(card.openTime, pasted, later(at, pasted), hottest);
  }
  return limit;
}

function limitAt(openTime: OpenTime, pasted: Instant, at: Instant, temperature: Celsius | null): OpenLimit {
  const length = openTime.by === 'minutes' ? openTime.minutes : temperature === null ? shortestMinutes(openTime.rows) : openMinutesAt(openTime.rows, temperature);
  const end = (wait: Minutes): Instant => roundDownToMinute(plus(pasted, wait));
  if (length !== null) return { kind: 'limit', at: end(length), minutes: length, temperature };
  const shortest = openTime.by === 'rows' ? shortestMinutes(openTime.rows) : null;
  return temperature === null || shortest === null ? { kind: 'none' } : { kind: 'too hot', at: earlier(at, later(pasted, end(shortest))), temperature };
}
