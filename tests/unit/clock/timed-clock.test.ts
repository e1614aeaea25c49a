import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { openTimedClock } from '../../../src/clock/timed-clock.js';
import { instant, type Instant } from '../../../src/cure/units.js';
import { SimulatedTiming } from './simulated-timing.js';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
const START = instant(Date.UTC(2026, 2, 2, 7, 0));
const after = (ms: number): Instant => instant(START + ms);

const open = () => {
  const timing = new SimulatedTiming(START);
  const errors: unknown[] = [];
  const clock = openTimedClock(timing, (error) => { errors.push(error); });
  const rungAt: Instant[] = [];
  return { timing, clock, errors, rungAt, ring: () => { rungAt.push(clock.now()); } };
};

describe('one armed wake-up', () => {
  it('runs no timer while nothing is armed', () => {
    const { timing, clock, ring } = open();
    expect(timing.asleep).toBe(false);
    clock.arm(after(HOUR), ring);
    clock.arm(null, ring);
    expect(timing.asleep).toBe(false);
    clock.arm(after(1), ring);
    timing.run(MINUTE);
    expect(timing.asleep).toBe(false);
  });

  it('rings to the millisecond 30 days ahead, in sleeps no longer than allowed', () => {
    const { timing, clock, ring, rungAt } = open();
    clock.arm(after(30 * DAY), ring);
    timing.run(30 * DAY - 1);
    expect(rungAt).toEqual([]);
    timing.run(1);
    expect(rungAt).toEqual([after(30 * DAY)]);
    expect(Math.max(...timing.sleeps)).toBe(timing.longestSleep);
  });

  it('rings within a minute after the clock was set forward past the moment', () => {
    const { timing, clock, ring, rungAt } = open();
    clock.arm(after(HOUR), ring);
    timing.run(10_000);
    timing.step(2 * HOUR);
    timing.run(MINUTE);
    expect(rungAt).toHaveLength(1);
    expect(rungAt[0]).toBeLessThanOrEqual(after(2 * HOUR + 10_000 + MINUTE));
  });

  it('waits for the moment after the clock was set back', () => {
    const { timing, clock, ring, rungAt } = open();
    clock.arm(after(HOUR), ring);
    timing.run(HOUR / 2);
    timing.step(-2 * HOUR);
    timing.run(2.5 * HOUR - 1);
    expect(rungAt).toEqual([]);
    timing.run(1);
    expect(rungAt).toEqual([after(HOUR)]);
  });

  it('sleeps on when its timer is a little fast', () => {
    const { timing, clock, ring, rungAt } = open();
    clock.arm(after(90_000), ring);
    timing.early = 0.4;
    timing.run(90_001);
    expect(rungAt).toHaveLength(1);
    expect(rungAt[0]).toBeGreaterThanOrEqual(after(90_000));
  });

  it('tells of a ring that failed and rings again, waiting longer each time', () => {
    const { timing, clock, errors } = open();
    let failing = 8;
    const ring = vi.fn(() => {
      if (failing > 0) {
        failing -= 1;
        throw new Error('disk full');
      }
    });
    clock.arm(after(0), ring);
    timing.run(1);
    expect(errors).toHaveLength(1);
    const first = timing.sleeps.length - 1;
    timing.run(10 * MINUTE);
    expect(errors).toHaveLength(8);
    expect(ring).toHaveBeenCalledTimes(9);
    expect(timing.sleeps.slice(first)).toEqual([1, 2, 4, 8, 16, 32, 60, 60].map((seconds) => seconds * 1000));
    failing = 1;
    clock.arm(clock.now(), ring);
    timing.run(1);
    expect(timing.sleeps.at(-1)).toBe(1000);
  });

  it('drops the second try when something new is armed or the clock is closed', () => {
    for (const instead of ['new', 'closed'] as const) {
      const { timing, clock, ring, rungAt, errors } = open();
      clock.arm(after(0), () => { throw new Error('no'); });
      timing.run(1);
      if (instead === 'new') clock.arm(after(MINUTE), ring);
      else clock.close();
      timing.run(HOUR);
      expect(errors).toHaveLength(1);
      expect(rungAt).toHaveLength(instead === 'new' ? 1 : 0);
    }
  });

  it('does not come back when it was closed by the ring that failed', () => {
    const { timing, clock } = open();
    clock.arm(after(0), () => {
      clock.close();
      throw new Error('no');
    });
    timing.run(HOUR);
    expect(timing.asleep).toBe(false);
  });

  it('tries again even when the failed ring had armed something later', () => {
    const { timing, clock, ring, rungAt } = open();
    let first = true;
    clock.arm(after(0), () => {
      clock.arm(after(DAY), ring);
      ring();
      if (first) {
        first = false;
        throw new Error('once');
      }
    });
    timing.run(HOUR);
    expect(rungAt).toHaveLength(2);
    timing.run(DAY);
    expect(rungAt).toHaveLength(3);
  });

  it('never rings before the moment and always within a minute of it, however the clock is stepped', () => {
    const pieces = fc.array(fc.record({ run: fc.integer({ min: 0, max: 2 * HOUR }), step: fc.integer({ min: -3 * HOUR, max: 3 * HOUR }) }), { maxLength: 12 });
    fc.assert(
      fc.property(pieces, fc.integer({ min: 0, max: 6 * HOUR }), fc.integer({ min: 0, max: 2 }), (path, ahead, early) => {
        const { timing, clock, ring, rungAt } = open();
        const at = after(ahead);
        timing.early = early;
        clock.arm(at, ring);
        let dueSince: number | null = null;
        for (const { run, step } of path) {
          for (let left = run; left > 0; left -= MINUTE / 2) {
            timing.run(Math.min(left, MINUTE / 2));
            dueSince = timing.now() < at ? null : (dueSince ?? timing.now());
            if (dueSince !== null && timing.now() - dueSince > 1.5 * MINUTE) expect(rungAt).toHaveLength(1);
          }
          timing.step(step);
          dueSince = null;
        }
        for (const rung of rungAt) expect(rung).toBeGreaterThanOrEqual(at);
        expect(rungAt.length).toBeLessThanOrEqual(1);
      }),
      { numRuns: 200 },
    );
  });
});
