import { describe, expect, it, onTestFinished, vi } from 'vitest';
import type { Clock } from '../../src/clerk/ports.js';
import { instant, type Instant } from '../../src/cure/units.js';
import { openPracticeClock } from '../../src/clock/practice-clock.js';
import { openSystemClock } from '../../src/clock/system-clock.js';

interface Driven {
  readonly clock: Clock;
  /** Lets at least so many ms of the clock's own time pass, with everything that rings in it. */
  readonly pass: (ms: number) => Promise<void>;
}

const MONDAY = instant(Date.UTC(2026, 2, 2, 7, 0));
const SPEED = 600;
const fail = (error: unknown): void => { throw error; };
const wait = (ms: number): Promise<void> => new Promise((resolve) => { setTimeout(resolve, ms + 30); });

const CLOCKS: readonly { readonly name: string; readonly open: () => Driven; readonly unit: number }[] = [
  { name: 'system clock', unit: 10, open: () => ({ clock: openSystemClock(fail), pass: wait }) },
  {
    name: 'running practice clock',
    unit: 10 * SPEED,
    open: () => ({ clock: openPracticeClock({ startsAt: MONDAY, speed: SPEED }, fail), pass: (ms) => wait(ms / SPEED) }),
  },
  {
    name: 'standing practice clock',
    unit: 60_000,
    open: () => {
      const clock = openPracticeClock({ startsAt: MONDAY, speed: null }, fail);
      if (clock.kind !== 'standing') throw new Error('It runs.');
      const pass = async (ms: number): Promise<void> => {
        await new Promise(setImmediate);
        clock.advanceTo(instant(clock.now() + ms));
      };
      return { clock, pass };
    },
  },
];

describe.each(CLOCKS)('$name', ({ open, unit }) => {
  const opened = (): Driven => {
    const driven = open();
    onTestFinished(() => { driven.clock.close(); });
    return driven;
  };
  const inUnits = (clock: Clock, units: number): Instant => instant(clock.now() + units * unit);

  it('says when it began, and never goes back', async () => {
    const { clock, pass } = opened();
    const first = clock.now();
    expect(clock.startedAt).toBeLessThanOrEqual(first);
    await pass(unit);
    expect(clock.now()).toBeGreaterThanOrEqual(first + unit);
  });

  it('rings once when the moment has come, and never before', async () => {
    const { clock, pass } = opened();
    const at = inUnits(clock, 2);
    const rungAt: Instant[] = [];
    clock.arm(at, () => { rungAt.push(clock.now()); });
    expect(rungAt).toEqual([]);
    await pass(5 * unit);
    await vi.waitFor(() => { expect(rungAt).toHaveLength(1); });
    expect(rungAt[0]).toBeGreaterThanOrEqual(at);
    await pass(3 * unit);
    expect(rungAt).toHaveLength(1);
  });

  it('rings for a moment that has passed, but not inside the call that arms it', async () => {
    const { clock, pass } = opened();
    const ring = vi.fn();
    clock.arm(inUnits(clock, -9), ring);
    expect(ring).not.toHaveBeenCalled();
    await pass(0);
    await vi.waitFor(() => { expect(ring).toHaveBeenCalledTimes(1); });
  });

  it('forgets the old wake-up for a new one, and every one for null', async () => {
    const { clock, pass } = opened();
    const [first, second, third] = [vi.fn(), vi.fn(), vi.fn()];
    clock.arm(inUnits(clock, 1), first);
    clock.arm(inUnits(clock, 2), second);
    await pass(4 * unit);
    await vi.waitFor(() => { expect(second).toHaveBeenCalledTimes(1); });
    clock.arm(inUnits(clock, 1), third);
    clock.arm(null, third);
    await pass(4 * unit);
    expect([first, third].map((ring) => ring.mock.calls.length)).toEqual([0, 0]);
  });

  it('rings through a chain, each ring arming the next', async () => {
    const { clock, pass } = opened();
    const due = [1, 2, 2, 3].map((units) => inUnits(clock, units));
    const rungAt: Instant[] = [];
    const armNext = (): void => {
      clock.arm(due[rungAt.length] ?? null, () => {
        rungAt.push(clock.now());
        armNext();
      });
    };
    armNext();
    await pass(4 * unit);
    await vi.waitFor(() => { expect(rungAt).toHaveLength(4); });
    for (const [index, at] of due.entries()) expect(rungAt[index]).toBeGreaterThanOrEqual(at);
  });

  it('rings no more once it is closed', async () => {
    const { clock, pass } = opened();
    const ring = vi.fn();
    clock.arm(inUnits(clock, 1), ring);
    clock.close();
    clock.arm(inUnits(clock, 1), ring);
    await pass(3 * unit);
    expect(ring).not.toHaveBeenCalled();
  });
});
