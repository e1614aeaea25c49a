import { DateTime } from 'luxon';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { bellExpressions } from '../../../src/clock/bell-expressions.js';
import { ringBells } from '../../../src/clock/daily-bells.js';
import type { Instant } from '../../../src/cure/units.js';
import type { OpeningHours, Shop } from '../../../src/repair/shop.js';

const ZONE = 'Europe/Berlin';
const local = (text: string): number => DateTime.fromISO(text, { zone: ZONE }).toMillis();
const hours = (opens: number, closes: number): OpeningHours => ({ opens: opens * 60, closes: closes * 60 });

describe('bells of the opening hours', () => {
  const of = (days: Partial<Shop['hours']>): { bell: string; expression: string }[] =>
    bellExpressions({ hours: { 1: null, 2: null, 3: null, 4: null, 5: null, 6: null, 7: null, ...days } });

  it('puts days with the same time on one line', () => {
    const usual = hours(7.5, 17);
    expect(of({ 1: usual, 2: usual, 3: usual, 4: usual, 5: hours(7.5, 15), 7: hours(9, 12.25) })).toEqual([
      { bell: 'opening', expression: '30 7 * * 1,2,3,4,5' },
      { bell: 'opening', expression: '0 9 * * 0' },
      { bell: 'closing', expression: '0 17 * * 1,2,3,4' },
      { bell: 'closing', expression: '0 15 * * 5' },
      { bell: 'closing', expression: '15 12 * * 0' },
    ]);
  });

  it('rings midnight on the day after', () => {
    expect(of({ 6: hours(0, 24), 7: hours(0, 24) })).toEqual([
      { bell: 'opening', expression: '0 0 * * 0,6' },
      { bell: 'closing', expression: '0 0 * * 0,1' },
    ]);
  });

  it('is silent for a shop that never opens', () => {
    expect(of({})).toEqual([]);
  });
});

describe('ringing the bells', () => {
  beforeEach(() => { vi.useFakeTimers(); });
  afterEach(() => { vi.useRealTimers(); });

  const start = (onBell?: (bell: { expression: string }) => void) => {
    const rung: [string, Instant][] = [];
    const errors: unknown[] = [];
    const bells = ringBells([{ expression: '30 7 * * 1,2' }, { expression: '0 17 * * 1' }], ZONE, (bell, dueAt) => {
      rung.push([bell.expression, dueAt]);
      onBell?.(bell);
    }, (error) => { errors.push(error); });
    return { bells, rung, errors };
  };

  it('rings in shop time, also across the change of the clocks, until it is disposed of', async () => {
    vi.setSystemTime(local('2026-03-23T07:29:30'));
    const { bells, rung } = start();
    await vi.advanceTimersByTimeAsync(local('2026-03-30T08:00') - Date.now());
    expect(rung).toEqual([
      ['30 7 * * 1,2', local('2026-03-23T07:30')],
      ['0 17 * * 1', local('2026-03-23T17:00')],
      ['30 7 * * 1,2', local('2026-03-24T07:30')],
      ['30 7 * * 1,2', local('2026-03-30T07:30')],
    ]);
    bells[Symbol.dispose]();
    expect(vi.getTimerCount()).toBe(0);
  });

  it('rings late, with its true moment, when the machine slept', async () => {
    vi.setSystemTime(local('2026-03-23T07:29:30'));
    const { bells, rung } = start();
    vi.setSystemTime(local('2026-03-23T09:10'));
    await vi.advanceTimersByTimeAsync(60_000);
    expect(rung).toEqual([['30 7 * * 1,2', local('2026-03-23T07:30')]]);
    bells[Symbol.dispose]();
  });

  it('tells of a listener that fails, and rings on', async () => {
    vi.setSystemTime(local('2026-03-23T07:29:30'));
    const { bells, rung, errors } = start(() => { throw new Error('no'); });
    await vi.advanceTimersByTimeAsync(local('2026-03-24T08:00') - Date.now());
    expect([rung.length, errors.length]).toEqual([3, 3]);
    bells[Symbol.dispose]();
  });
});
