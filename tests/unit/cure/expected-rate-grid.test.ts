import { describe, expect, it } from 'vitest';
import { integralAt, rateAt } from '../../../src/cure/grid-values.js';
import { gridOf, rateGrid } from '../../../src/cure/rate-grid.js';
import { rateIntegral, rateTable, steadyRate } from '../../../src/cure/rate-table.js';
import { celsius, MILLISECONDS_PER_MINUTE } from '../../../src/cure/units.js';
import { rows } from '../../support/joint.js';

const TABLES = [
  rateTable(rows({ 15: 450, 20: 300, 30: 150, 40: 75, 65: 25 })),
  rateTable(rows({ 21.11: 3000, 37.78: 950, 60.56: 225 }), celsius(45.5)),
  rateTable(rows({ 20: 400, 22: 90, 23: 89, 60: 3 }), celsius(70)),
];
const GRID = rateGrid(TABLES);
const apart = (value: number, expected: number): number => (expected === 0 ? Math.abs(value) : Math.abs(value / expected - 1));
const everywhere = Array.from({ length: 4000 }, (_, index) => celsius(-10 + index * 0.02503));
const borders = [15, 20, 21.11, 22, 23, 30, 37.78, 40, 45.5, 60, 60.56, 65, 70, 200, -200].flatMap((at) => [at, at * (1 + Number.EPSILON), at * (1 - Number.EPSILON)]).map(celsius);

describe('the grid of three milestones', () => {
  it.each(TABLES.map((table, lane) => [lane, table] as const))('has the rate and R of each table, at bends and at highest temperatures too: %d', (lane, table) => {
    for (const temperature of [...everywhere, ...borders]) {
      expect(apart(rateAt(GRID, lane, temperature) * MILLISECONDS_PER_MINUTE, steadyRate(table, temperature)), `${temperature} °C`).toBeLessThan(3e-8);
      const difference = Math.abs(integralAt(GRID, lane, temperature) * MILLISECONDS_PER_MINUTE - rateIntegral(table, temperature));
      expect(difference, `${temperature} °C`).toBeLessThanOrEqual(1e-9 * steadyRate(table, temperature) + 1e-15 * rateIntegral(table, temperature));
    }
  });

  it('of one milestone is worked out once', () => {
    const [table] = TABLES;
    if (table === undefined) throw new Error('no table');
    expect(gridOf(table)).toBe(gridOf(table));
  });
});
