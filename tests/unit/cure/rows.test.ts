import { describe, expect, it } from 'vitest';
import { coldestRow, minutesAt, openMinutesAt, shortestMinutes } from '../../../src/cure/rows.js';
import { celsius, instant, roundDownToMinute, roundUpToMinute } from '../../../src/cure/units.js';
import { on, rows, said } from '../../support/joint.js';

/** Invented figures of the example card P1. */
const HANDLING = rows({ 15: 450, 20: 300, 30: 150, 40: 75, 65: 25 });
const OPEN = rows({ 20: 60, 30: 30 });

describe('minutes at a temperature', () => {
  it.each([
    [15, 450],
    [20, 300],
    [30, 150],
    [40, 75],
    [65, 25],
    // Above the hottest row there is no bonus.
    [80, 25],
    // ln(minutes) is straight between rows: 300 * (150 / 300) ** 0.7 and 450 * (300 / 450) ** 0.5.
    [27, 184.6716],
    [17.5, 367.4235],
    [25, 212.1320],
    [52.5, 43.3013],
  ])('at %d °C is %d', (temperature, expected) => {
    expect(minutesAt(HANDLING, celsius(temperature))).toBeCloseTo(expected, 3);
  });

  it.each([14.999, 0, -40])('counts nothing at %d °C, below the coldest row', (temperature) => {
    expect(minutesAt(HANDLING, celsius(temperature))).toBeNull();
  });

  it('takes rows in any order and knows nothing without rows', () => {
    expect(minutesAt([...HANDLING].reverse(), celsius(27))).toBeCloseTo(184.6716, 3);
    expect([minutesAt([], celsius(20)), coldestRow([]), shortestMinutes([])]).toEqual([null, null, null]);
  });

  it('knows the ends of the rows', () => {
    expect([coldestRow(HANDLING), shortestMinutes(HANDLING)]).toEqual([15, 25]);
  });
});

describe('open time', () => {
  it.each([
    [10, 60],
    [20, 60],
    [20.1, 30],
    [27, 30],
    [30, 30],
    [30.1, null],
  ])('at %d °C takes the next hotter row: %s', (temperature, expected) => {
    expect(openMinutesAt(OPEN, celsius(temperature))).toBe(expected);
  });
});

describe('rounding', () => {
  const dust = (at: string, milliseconds: number) => instant(on(at) + milliseconds);
  it.each([
    ['11:30', 0, '11:30', '11:30'],
    ['11:30', 1, '11:30', '11:30'],
    ['11:30', -1, '11:30', '11:30'],
    ['11:30', 0.0001, '11:30', '11:30'],
    ['11:30', 2, '11:31', '11:30'],
    ['11:30', -2, '11:30', '11:29'],
    ['11:30', 30_000, '11:31', '11:30'],
  ])('%s and %d ms is %s for strength and %s for open time', (at, milliseconds, up, down) => {
    expect([said(roundUpToMinute(dust(at, milliseconds))), said(roundDownToMinute(dust(at, milliseconds)))]).toEqual([up, down]);
  });
});
