import { describe, expect, it } from 'vitest';
import { integral } from '../../../src/cure/quadrature.js';
import { rateTable, steadyRate } from '../../../src/cure/rate-table.js';
import { reachedAfter } from '../../../src/cure/reached-after.js';
import { celsius, minutes } from '../../../src/cure/units.js';
import { BUILD_UPS, temperatureAfter, TIME_CONSTANTS, timeConstantFrom, towardsThrough, warmUpEarned, warmUpLasts, type WarmUp } from '../../../src/cure/warm-up.js';
import { solvedShare } from '../../support/expected-oracle.js';
import { rows } from '../../support/joint.js';

const SHEET = rows({ 15: 450, 20: 300, 30: 150, 40: 75, 65: 25 });
const TABLE = rateTable(SHEET);

const warmUp = (from: number, towards: number, timeConstant: number): WarmUp => ({ from: celsius(from), towards: celsius(towards), timeConstant: minutes(timeConstant) });

describe('the temperature of a warm-up', () => {
  // First order: 1 - 1/e of the way after one time constant.
  it.each([
    [0, 20],
    [8, 20 + 40 * (1 - Math.exp(-1))],
    [24, 20 + 40 * (1 - Math.exp(-3))],
    [10_000, 60],
  ])('after %d min is %d °C', (after, expected) => {
    expect(temperatureAfter(warmUp(20, 60, 8), minutes(after))).toBeCloseTo(expected, 10);
  });

  it('takes longer where there is more metal', () => {
    expect(BUILD_UPS.map((buildUp) => TIME_CONSTANTS[buildUp])).toEqual([8, 20]);
  });
});

describe('what a warm-up earns', () => {
  it.each([
    [20, 60, 8, 5],
    [20, 60, 8, 90],
    [20, 60, 20, 90],
    [5, 60, 20, 45],
    [5, 90, 8, 700],
    [60, 20, 20, 60],
    [10, 14.9, 8, 300],
    [20, 65, 8, 400],
    [22, 22, 8, 60],
  ])('from %d towards %d °C, %d min, over %d min, is what the solver finds', (from, towards, constant, length) => {
    const course = warmUp(from, towards, constant);
    const at = (minute: number): number => towards - (towards - from) * Math.exp(-minute / constant);
    const cuts = SHEET.map((row) => -constant * Math.log((towards - row.temperature) / (towards - from)));
    const solved = solvedShare(SHEET, at, length, cuts.filter(Number.isFinite));
    const earned = warmUpEarned(TABLE, course, minutes(length));
    if (solved === 0) expect(earned).toBe(0);
    else expect(Math.abs(earned / solved - 1)).toBeLessThan(1e-8);
  });

  it('goes on at the rate of its end for as long as one likes', () => {
    const course = warmUp(20, 60, 8);
    const lasts = warmUpLasts(course);
    const week = warmUpEarned(TABLE, course, minutes(lasts + 10_000)) - warmUpEarned(TABLE, course, lasts);
    expect(week).toBeCloseTo(10_000 * steadyRate(TABLE, celsius(60)), 9);
  });
});

describe('the time constant behind two readings', () => {
  it.each([8, 20, 3.3])('is found again: %d min', (constant) => {
    const course = warmUp(18, 60, constant);
    const [first, second] = [temperatureAfter(course, minutes(4)), temperatureAfter(course, minutes(15))];
    expect(timeConstantFrom(first, second, minutes(11), celsius(60))).toBeCloseTo(constant, 9);
    expect(towardsThrough(first, second, minutes(11), minutes(constant))).toBeCloseTo(60, 9);
  });

  it.each([
    ['readings at one moment', 30, 40, 0, 60],
    ['a joint that got colder', 40, 30, 10, 60],
    ['a joint that stayed', 40, 40, 10, 60],
    ['a joint already there', 50, 60, 10, 60],
    ['a joint beyond', 50, 61, 10, 60],
    ['a joint that comes from beyond and passes', 61, 50, 10, 60],
    ['two readings the wrong way round', 30, 40, -10, 60],
  ])('is unknown for %s', (_name, first, second, between, towards) => {
    expect(timeConstantFrom(celsius(first), celsius(second), minutes(between), celsius(towards))).toBeNull();
  });
});

describe('the Gauss-Legendre rule', () => {
  it('is exact for a polynomial of degree 31', () => {
    expect(integral((x) => 32 * x ** 31 + 3 * x * x + 1, -1, 2)).toBeCloseTo(2 ** 32 - 1 + 9 + 3, 3);
    expect(integral(Math.exp, 0, 1)).toBeCloseTo(Math.E - 1, 14);
  });
});

describe('the search for the moment at which something is earned', () => {
  it('finds it behind a pause and behind a jump of the rate', () => {
    const pause = { earned: (after: number) => Math.max(0, after - 30), rate: (after: number) => (after < 30 ? 0 : 1) };
    expect(reachedAfter(pause, minutes(100), 12)).toBeCloseTo(42, 8);
    const jump = { earned: (after: number) => after / 1000 + Math.max(0, after - 50) * 5, rate: (after: number) => (after < 50 ? 0.001 : 5.001) };
    expect(reachedAfter(jump, minutes(100), 5.051)).toBeCloseTo(51, 8);
  });

  it('finds the first moment of a pause that begins full', () => {
    const full = { earned: (after: number) => Math.min(10, after), rate: (after: number) => (after < 10 ? 1 : 0) };
    expect(reachedAfter(full, minutes(100), 10)).toBeCloseTo(10, 8);
  });

  it('ends where the rate leads nowhere', () => {
    const steep = { earned: (after: number) => after ** 40, rate: (after: number) => 1e-3 * after + 1e-9 };
    expect(reachedAfter(steep, minutes(3), 1)).toBeCloseTo(1, 8);
  });
});
