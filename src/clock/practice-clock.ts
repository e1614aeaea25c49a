import type { Clock } from '../clerk/ports.js';
import { instant, type Instant } from '../cure/units.js';
import { realSleep } from './real-sleep.js';
import { openStandingClock, type StandingClock } from './standing-clock.js';
import { openTimedClock } from './timed-clock.js';

/** A clock that runs faster or slower than real time. */
export interface RunningClock extends Clock {
  readonly kind: 'running';
}

export type PracticeClock = StandingClock | RunningClock;

export interface PracticeStart {
  readonly startsAt: Instant;
  /** How many times real time; null: it stands, and moves only when it is told to. */
  readonly speed: number | null;
}

/** Timers hold at most 2^31 - 1 ms; real time cannot jump under a counter, so nothing shorter is needed. */
const LONGEST_REAL_SLEEP_MS = 86_400_000;

/** A clock to practise with: its time of day has nothing to do with the real one. */
export function openPracticeClock({ startsAt, speed }: PracticeStart, onError: (error: unknown) => void): PracticeClock {
  return speed === null ? openStandingClock(startsAt, onError) : openRunningClock(startsAt, speed, onError);
}

function openRunningClock(startsAt: Instant, speed: number, onError: (error: unknown) => void): RunningClock {
  const began = performance.now();
  const clock = openTimedClock(
    {
      now: () => instant(startsAt + Math.floor((performance.now() - began) * speed)),
      sleep: (ms, wake) => realSleep(ms / speed, wake),
      longestSleep: LONGEST_REAL_SLEEP_MS * speed,
    },
    onError,
  );
  return { ...clock, kind: 'running' };
}
