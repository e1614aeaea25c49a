import { describe, expect, it, vi } from 'vitest';
import { openStandingClock } from '../../../src/clock/standing-clock.js';
import { instant, type Instant } from '../../../src/cure/units.js';

const START = instant(Date.UTC(2026, 2, 2, 7, 0));
const at = (minute: number): Instant => instant(START + minute * 60_000);
const open = () => {
  const onError = vi.fn();
  return { clock: openStandingClock(START, onError), onError };
};
const aTurn = (): Promise<void> => new Promise(setImmediate);

describe('a standing clock', () => {
  it('stands', async () => {
    const { clock } = open();
    await aTurn();
    expect([clock.now(), clock.startedAt]).toEqual([START, START]);
  });

  it('stands at each armed moment while it rings, and at the target in the end', () => {
    const { clock } = open();
    const rungAt: Instant[] = [];
    const ring = (): void => {
      rungAt.push(clock.now());
      if (rungAt.length < 3) clock.arm(at(10 * (rungAt.length + 1)), ring);
      else if (rungAt.length === 3) clock.arm(at(31), ring);
    };
    clock.arm(at(10), ring);
    clock.advanceTo(at(30.5));
    expect(rungAt).toEqual([at(10), at(20), at(30)]);
    expect(clock.now()).toBe(at(30.5));
    clock.advanceTo(at(31));
    expect(rungAt).toHaveLength(4);
  });

  it('rings what was armed for the past at the moment it stands', () => {
    const { clock } = open();
    clock.advanceTo(at(5));
    const ring = vi.fn(() => clock.now());
    clock.arm(at(1), ring);
    clock.advanceTo(at(9));
    expect(ring).toHaveReturnedWith(at(5));
  });

  it('never goes back, and stays where it is', () => {
    const { clock } = open();
    clock.advanceTo(at(5));
    expect(() => { clock.advanceTo(at(4)); }).toThrow('stands at 2026-03-02T07:05:00.000Z and cannot go back to 2026-03-02T07:04:00.000Z');
    expect(clock.now()).toBe(at(5));
  });

  it('is not moved by a ring', () => {
    const { clock } = open();
    clock.arm(at(1), () => { clock.advanceTo(at(3)); });
    expect(() => { clock.advanceTo(at(2)); }).toThrow('already moving');
  });

  it('stops where a ring failed, and rings there again at the next move', () => {
    const { clock } = open();
    const ring = vi.fn<() => void>().mockImplementationOnce(() => { throw new Error('disk full'); });
    clock.arm(at(1), ring);
    expect(() => { clock.advanceTo(at(2)); }).toThrow('disk full');
    expect(clock.now()).toBe(at(1));
    clock.advanceTo(at(2));
    expect(ring).toHaveBeenCalledTimes(2);
    expect(clock.now()).toBe(at(2));
  });

  it('tells of an error in a ring that came by itself', async () => {
    const { clock, onError } = open();
    const ring = vi.fn<() => void>().mockImplementationOnce(() => { throw new Error('disk full'); });
    clock.arm(START, ring);
    await aTurn();
    expect(onError).toHaveBeenCalledTimes(1);
    clock.advanceTo(START);
    expect(ring).toHaveBeenCalledTimes(2);
  });

  it('rings at ever so many moments on a long way', () => {
    const { clock } = open();
    const ring = vi.fn(() => { clock.arm(instant(clock.now() + 1), ring); });
    clock.arm(START, ring);
    clock.advanceTo(instant(START + 150_000));
    expect(ring).toHaveBeenCalledTimes(150_001);
  });

  it('rings many times at one moment, but not for ever', () => {
    const { clock } = open();
    let left = 99_999;
    const few = (): void => {
      left -= 1;
      clock.arm(left > 0 ? at(1) : null, few);
    };
    clock.arm(at(1), few);
    clock.advanceTo(at(2));
    expect(left).toBe(0);
    const endless = (): void => { clock.arm(at(3), endless); };
    clock.arm(at(3), endless);
    expect(() => { clock.advanceTo(at(4)); }).toThrow('rang 100000 times at 2026-03-02T07:03:00.000Z');
  });
});
