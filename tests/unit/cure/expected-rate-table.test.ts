import { describe, expect, it } from 'vitest';
import { expectedRateAt } from '../../../src/cure/arrhenius.js';
import { meanRate, nearRate, rateIntegral, rateTable, steadyRate } from '../../../src/cure/rate-table.js';
import { celsius } from '../../../src/cure/units.js';
import { passes, solvedShare } from '../../support/expected-oracle.js';
import { rows } from '../../support/joint.js';
import { practiceRows } from '../../support/practice-law.js';

const SHEETS = {
  'an ordinary sheet': rows({ 15: 450, 20: 300, 30: 150, 40: 75, 65: 25 }),
  'rows from °F': rows({ 21.11: 300, 37.78: 95, 60.56: 22.5 }),
  'a steep sheet': rows({ 20: 40_000, 22: 900, 23: 890, 60: 3 }),
  'one row': rows({ 23: 1440 }),
  'the law of common practice, no source': practiceRows(23),
};
const apart = (value: number, expected: number): number => (expected === 0 ? Math.abs(value) : Math.abs(value / expected - 1));

describe.each(Object.entries(SHEETS))('the table of %s', (_name, sheet) => {
  const table = rateTable(sheet);

  it('gives a steady temperature its rate', () => {
    for (let temperature = 5; temperature < 80; temperature += 0.0817) {
      expect(apart(steadyRate(table, celsius(temperature)), expectedRateAt(sheet, celsius(temperature))), `${temperature}`).toBeLessThan(1e-9);
    }
    for (const row of sheet) expect(apart(steadyRate(table, row.temperature), 1 / row.minutes)).toBeLessThan(1e-12);
  });

  it.each([
    [10, 70],
    [20, 60],
    [60, 20],
    [14, 15.5],
    [22.9, 23.1],
    [30, 30.07],
    [30, 30.04],
    [64.99, 65.01],
    [70, 90],
    [-20, 5],
  ])('gives a change from %d to %d °C what the solver finds', (from, to) => {
    const solved = solvedShare(sheet, (minute) => from + (to - from) * minute, 1, passes(sheet, from, to, 1));
    expect(apart(meanRate(table, celsius(from), celsius(to)), solved)).toBeLessThan(1e-8);
  });

  it('says the same near and far, forwards and backwards', () => {
    for (let from = 5; from < 75; from += 3.171) {
      for (const change of [0.06, 0.5, 9]) {
        const [one, other] = [celsius(from), celsius(from + change)];
        expect(apart(nearRate(table, one, other), meanRate(table, one, other))).toBeLessThan(1e-10);
        expect(meanRate(table, other, one)).toBeCloseTo(meanRate(table, one, other), 15);
      }
    }
  });

  it('keeps its digits for changes far below what any thermometer shows', () => {
    for (let from = 16; from < 75; from += 3.171) {
      for (const change of [1e-3, 1e-6, 1e-9, 1e-12]) expect(apart(meanRate(table, celsius(from), celsius(from + change)), steadyRate(table, celsius(from + change / 2)))).toBeLessThan(1e-5);
    }
  });
});

describe('the antiderivative', () => {
  const sheet = SHEETS['an ordinary sheet'];
  const table = rateTable(sheet);

  it('is worked out once for the rows of a card', () => {
    expect(rateTable(sheet)).toBe(table);
    expect(rateTable([...sheet])).not.toBe(table);
    expect(rateTable([...sheet])).toEqual(table);
  });

  it('begins at the coldest row and goes on as a straight line above the hottest', () => {
    expect(rateIntegral(table, celsius(15))).toBe(0);
    expect(rateIntegral(table, celsius(-40))).toBe(0);
    expect(rateIntegral(table, celsius(75)) - rateIntegral(table, celsius(65))).toBeCloseTo(10 / 25, 12);
  });

  it('counts only the part of a change that is warm enough', () => {
    expect(apart(meanRate(table, celsius(5), celsius(25)), meanRate(table, celsius(15), celsius(25)) / 2)).toBeLessThan(1e-12);
    expect(apart(nearRate(table, celsius(14.98), celsius(15.02)), nearRate(table, celsius(15), celsius(15.02)) / 2)).toBeLessThan(1e-9);
  });

  it('is nothing everywhere without rows', () => {
    const none = rateTable([]);
    expect([rateIntegral(none, celsius(40)), steadyRate(none, celsius(40)), meanRate(none, celsius(10), celsius(60)), nearRate(none, celsius(20), celsius(20.01))]).toEqual([0, 0, 0, 0]);
  });
});

describe('a table with a highest temperature that counts', () => {
  const sheet = SHEETS['an ordinary sheet'];
  const table = rateTable(sheet);
  const limited = rateTable(sheet, celsius(70));

  it('earns as before up to it, and nothing above', () => {
    expect([40, 70, 70.1, 90].map((temperature) => steadyRate(limited, celsius(temperature)))).toEqual([steadyRate(table, celsius(40)), 1 / 25, 0, 0]);
    expect(rateIntegral(limited, celsius(90))).toBe(rateIntegral(table, celsius(70)));
  });

  it.each([
    [60, 80],
    [80, 60],
    [75, 90],
  ])('counts of a change from %d to %d °C only the part below', (from, to) => {
    const solved = solvedShare(sheet, (minute) => (from + (to - from) * minute > 70 ? -40 : from + (to - from) * minute), 1, [...passes(sheet, from, to, 1), (70 - from) / (to - from)]);
    expect(apart(meanRate(limited, celsius(from), celsius(to)), solved)).toBeLessThan(1e-8);
  });

  it('parts a change that no thermometer shows', () => {
    expect(apart(nearRate(limited, celsius(69.99), celsius(70.02)), 1 / 3 / 25)).toBeLessThan(1e-9);
  });

  it('may lie below the hottest row', () => {
    const low = rateTable(sheet, celsius(50));
    expect([50, 50.1, 65].map((temperature) => steadyRate(low, celsius(temperature)) > 0)).toEqual([true, false, false]);
    expect(apart(nearRate(low, celsius(49.98), celsius(50.02)), nearRate(low, celsius(49.98), celsius(50)) / 2)).toBeLessThan(1e-9);
    expect(rateIntegral(low, celsius(65))).toBe(rateIntegral(table, celsius(50)));
  });

  it('is worked out once for each limit', () => {
    expect(rateTable(sheet, celsius(70))).toBe(limited);
    expect(rateTable(sheet)).toBe(table);
  });
});
