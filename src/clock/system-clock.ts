import type { Clock } from '../clerk/ports.js';
import { instant } from '../cure/units.js';
import { realSleep } from './real-sleep.js';
import { openTimedClock } from './timed-clock.js';

/**
 * Timers count running time, not the time of day. So an armed wake-up is looked at again once a minute:
 * that is the longest a reminder can be late after the clock was set forward or the machine was asleep.
 */
const RE_CHECK_MS = 60_000;

/** The real clock. `onError` hears of rings that failed; they are rung again. */
export function openSystemClock(onError: (error: unknown) => void): Clock {
  return openTimedClock({ now: () => instant(Date.now()), sleep: realSleep, longestSleep: RE_CHECK_MS }, onError);
}
