import { minus, minutesBetween, minutes, type Instant } from '../cure/units.js';
import type { EntryCommand, When } from './commands.js';
import type { Situation } from './decision.js';
import { lineOf } from './line-of.js';
import type { Refusal } from './refusal.js';

type Timed = Extract<EntryCommand, { readonly when: When }>;

const DAY = minutes(24 * 60);
/** Clocks of phones and shop PCs differ a little. */
const CLOCK_SLACK = 1;

/** The future, or further back than the shop allows, asks first (rule R9). Null: the time is fine. */
export function untimely(command: Timed, situation: Situation): Refusal | null {
  const { when } = command;
  const { now } = situation;
  if (minutesBetween(now, when.latest) > CLOCK_SLACK) {
    const yesterday = minus(when.latest, DAY);
    return { code: 'future', at: when.latest, nowLine: lineOf({ ...command, when: at(now, false) }), yesterday, yesterdayLine: lineOf({ ...command, when: at(yesterday, true) }) };
  }
  if (!when.confirmed && minutesBetween(when.earliest, now) > situation.shop.rhythm.backdating) {
    return { code: 'long-ago', at: when.latest, yesLine: lineOf({ ...command, when: { ...when, confirmed: true } }), nowLine: lineOf({ ...command, when: at(now, false) }) };
  }
  return null;
}

const at = (moment: Instant, stated: boolean): When => ({ earliest: moment, latest: moment, stated, confirmed: stated });
