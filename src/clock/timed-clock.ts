import type { Clock } from '../clerk/ports.js';
import type { Instant } from '../cure/units.js';

/** Where a clock takes its time from. */
export interface Timing {
  now(): Instant;
  /** Calls `wake` after `ms` of this clock's time, or a little later; returns how to call it off. */
  sleep(ms: number, wake: () => void): () => void;
  /**
   * Longest single sleep in ms of this clock's time. A sleeper does not notice that the clock was
   * set forward or that the machine was suspended; after this long it looks again.
   */
  readonly longestSleep: number;
}

const FIRST_RETRY_MS = 1_000;
const LONGEST_RETRY_MS = 60_000;

/**
 * One armed wake-up over any timing. While something is armed one timer runs, while nothing is armed none does.
 * Woken early (the clock was set back, the timer is a little fast) it sleeps on; woken late it rings.
 * A ring that throws is told to `onError` and rung again after 1 s, 2 s, 4 s … 60 s, unless something new is armed.
 */
export function openTimedClock(timing: Timing, onError: (error: unknown) => void): Clock {
  let callOff: (() => void) | null = null;
  let closed = false;
  let failures = 0;

  const disarm = (): void => {
    callOff?.();
    callOff = null;
  };

  const sleep = (ms: number, wake: () => void): void => {
    disarm();
    callOff = timing.sleep(ms, () => {
      callOff = null;
      wake();
    });
  };

  const sleepUntil = (at: Instant, ring: () => void): void => {
    const remaining = Math.max(0, at - timing.now());
    sleep(Math.min(remaining, timing.longestSleep), () => {
      if (timing.now() < at) sleepUntil(at, ring);
      else attempt(ring);
    });
  };

  const attempt = (ring: () => void): void => {
    try {
      ring();
      failures = 0;
    } catch (error) {
      failures += 1;
      onError(error);
      if (!closed) sleep(Math.min(FIRST_RETRY_MS * 2 ** (failures - 1), LONGEST_RETRY_MS), () => { attempt(ring); });
    }
  };

  return {
    now: () => timing.now(),
    startedAt: timing.now(),
    arm: (at, ring) => {
      disarm();
      if (at !== null && !closed) sleepUntil(at, ring);
    },
    close: () => {
      closed = true;
      disarm();
    },
  };
}
