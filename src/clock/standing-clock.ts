import type { Clock } from '../clerk/ports.js';
import { later, type Instant } from '../cure/units.js';

/** A clock that moves only when it is told to. */
export interface StandingClock extends Clock {
  readonly kind: 'standing';
  /**
   * Moves to `target` through every armed moment on the way, in order, ringing at each of them.
   * A ring that throws stops the journey there; the next call rings again.
   * @throws RangeError when `target` lies behind, Error when the rings never end.
   */
  advanceTo(target: Instant): void;
  /** The armed moment, or null. */
  next(): Instant | null;
}

/** Rings at one and the same moment after which somebody is going round in circles. */
const MOST_RINGS_AT_ONCE = 100_000;

interface WakeUp {
  readonly at: Instant;
  readonly ring: () => void;
}

/**
 * What is armed for now or before rings by itself, right after the work that armed it, as it would on a real clock;
 * an error of such a ring goes to `onError`, and the wake-up waits for the next move.
 */
export function openStandingClock(startsAt: Instant, onError: (error: unknown) => void): StandingClock {
  let now = startsAt;
  let armed: WakeUp | null = null;
  let moving = false;
  let soon: NodeJS.Immediate | null = null;
  let closed = false;

  const ringThrough = (target: Instant): void => {
    for (let rings = 1; armed !== null && armed.at <= target; rings += 1) {
      const due: WakeUp = armed;
      if (due.at > now) rings = 1;
      if (rings > MOST_RINGS_AT_ONCE) throw new Error(`The practice clock rang ${MOST_RINGS_AT_ONCE} times at ${new Date(now).toISOString()} and was armed for the same moment again.`);
      now = later(now, due.at);
      armed = null;
      try {
        due.ring();
      } catch (error) {
        armed ??= due;
        throw error;
      }
    }
    now = target;
  };

  const advanceTo = (target: Instant): void => {
    if (target < now) throw new RangeError(`The practice clock stands at ${new Date(now).toISOString()} and cannot go back to ${new Date(target).toISOString()}.`);
    if (moving) throw new Error('The practice clock is already moving.');
    moving = true;
    try {
      ringThrough(target);
    } finally {
      moving = false;
    }
  };

  const ringSoon = (): void => {
    soon = null;
    try {
      advanceTo(now);
    } catch (error) {
      onError(error);
    }
  };

  return {
    kind: 'standing',
    now: () => now,
    startedAt: startsAt,
    arm: (at, ring) => {
      armed = at === null || closed ? null : { at, ring };
      if (armed !== null && armed.at <= now && !moving) soon ??= setImmediate(ringSoon);
    },
    advanceTo,
    next: () => armed?.at ?? null,
    close: () => {
      closed = true;
      armed = null;
      if (soon !== null) clearImmediate(soon);
    },
  };
}
