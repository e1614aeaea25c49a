import { earlier, minutes, plus, type Instant } from '../cure/units.js';
import type { ReminderKind } from './reminder.js';

/** So many messages an hour reach one person one by one; common practice, no source. */
export const MOST_AN_HOUR = 6;
export const CROWDED_OVER = minutes(60);
/** What comes beyond them waits so long at most for what else comes. */
const WAITS = minutes(15);

/** What harms if it waits, and what a foreman has to decide, hot work among it: neither counted nor ever kept back, and always with its own buttons. */
export const isUrgent = (kind: ReminderKind | 'bundle' | 'stranger'): boolean => kind === 'open-limit' || kind === 'safety' || kind === 'fire-watch' || kind === 'decision';

export type Turn = { readonly how: 'alone' } | { readonly how: 'together' } | { readonly how: 'later'; readonly at: Instant };

/**
 * How the next message to a person goes out: alone, in one message with all that waits for them, or a little later with what comes meanwhile.
 * `said`: how many they got within the last hour; `waiting`: when each of the questions that are due now should have been asked.
 */
export function turnOf(said: number, waiting: readonly Instant[], now: Instant): Turn {
  if (said + waiting.length <= MOST_AN_HOUR) return { how: 'alone' };
  const [first = now, ...rest] = waiting;
  const until = plus(rest.reduce((one, other) => earlier(one, other), first), WAITS);
  if (said >= MOST_AN_HOUR && now < until) return { how: 'later', at: until };
  return waiting.length > 1 ? { how: 'together' } : { how: 'alone' };
}
