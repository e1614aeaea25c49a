import { describe, expect, it } from 'vitest';
import { minutes } from '../../src/cure/units.js';
import { additivityError, courses, rowsOf } from '../support/additivity.js';
import { convertedBy, MODEL_NAMES, MODELS, minutesUntil } from '../support/cure-model.js';
import { odeSolver } from '../support/ode-solver.js';

/**
 * How early our sum of minutes / row minutes can be. Scheil's rule (Arch. Eisenhuettenwes. 8 (1935) 565, from memory) is exact
 * where one rate constant drives everything (Cahn, Acta Metall. 4 (1956) 572, from memory), as in KN. With two paths of
 * different activation energy it is not, on either side. The models are oracles of tests/support/cure-model.ts, their sources
 * stand in references.json; the figures below are our own measurement over fixed random courses of a sheet with four rows.
 */
const PRINTED = [10, 20, 30, 60];
const JUMPS = courses(PRINTED, 1_200, false);
const ANYWHERE = courses(PRINTED, 800, true);

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

/** Early courses; worst, as a share of the true wait; lowest true conversion when announced; highest sum when it is true. */
function measured(name: keyof typeof MODELS, conversion: number, between: boolean): string {
  const error = additivityError(MODELS[name], conversion, rowsOf(MODELS[name], conversion, PRINTED), between ? ANYWHERE : JUMPS);
  return [percent(error.early / error.courses), percent(error.worstShare), error.lowestConversion.toFixed(3), error.highestSum.toFixed(3)].join(' | ');
}

describe('the sum over jumps between printed rows', () => {
  it.each([
    ['KN', 0.5, '0.0 % | 0.0 % | 0.500 | 1.000'],
    ['KN', 0.9, '0.0 % | 0.0 % | 0.900 | 1.000'],
    ['KN', 0.99, '0.0 % | 0.0 % | 0.990 | 1.000'],
    ['KS1', 0.5, '32.2 % | 10.6 % | 0.483 | 1.041'],
    ['KS1', 0.9, '30.4 % | 8.3 % | 0.891 | 1.033'],
    ['KS1', 0.99, '29.3 % | 5.9 % | 0.989 | 1.026'],
    ['KS2', 0.5, '59.4 % | 35.2 % | 0.384 | 1.251'],
    ['KS2', 0.9, '65.1 % | 36.5 % | 0.881 | 1.136'],
    ['KS2', 0.99, '76.2 % | 14.1 % | 0.990 | 1.026'],
  ] as const)('%s, conversion %d: %s', (name, conversion, expected) => {
    expect(measured(name, conversion, false)).toBe(expected);
  });
});

describe('the sum over temperatures between the rows, where the straight line errs late', () => {
  it.each([
    ['KN', 0.5, '0.0 % | 0.0 % | 0.500 | 1.000'],
    ['KN', 0.9, '0.0 % | 0.0 % | 0.900 | 1.000'],
    ['KN', 0.99, '0.0 % | 0.0 % | 0.990 | 1.000'],
    ['KS1', 0.5, '18.5 % | 9.0 % | 0.486 | 1.032'],
    ['KS1', 0.9, '16.5 % | 6.4 % | 0.892 | 1.028'],
    ['KS1', 0.99, '12.9 % | 4.1 % | 0.989 | 1.023'],
    ['KS2', 0.5, '41.5 % | 25.3 % | 0.390 | 1.239'],
    ['KS2', 0.9, '38.4 % | 18.6 % | 0.884 | 1.121'],
    ['KS2', 0.99, '12.4 % | 2.2 % | 0.990 | 1.021'],
  ] as const)('%s, conversion %d: %s', (name, conversion, expected) => {
    expect(measured(name, conversion, true)).toBe(expected);
  });
});

describe('the models behind it', () => {
  it.each(MODEL_NAMES)('%s, integrated in time by another method, is where it is said to be', (name) => {
    const { a1, e1, a2, e2, m, n } = MODELS[name];
    const course = [[20, 0.3], [60, 0.2], [30, 0.3], [10, 0.4]] as const;
    const rows = rowsOf(MODELS[name], 0.9, course.map(([temperature]) => temperature));
    const stretches = rows.map((row, index) => ({ ...row, minutes: minutes(row.minutes * (course[index]?.[1] ?? 0)) }));
    let conversion = 0;
    for (const stretch of stretches) {
      const constant = (a: number, e: number): number => a * Math.exp(-e / (8.31446261815324 * (stretch.temperature + 273.15)));
      const [k1, k2] = [constant(a1, e1), constant(a2, e2)];
      const { y } = odeSolver(1, 1e-11).solve((_, [reached = 0]) => [(k1 + k2 * Math.max(0, reached) ** m) * (1 - reached) ** n], 0, [conversion], stretch.minutes);
      conversion = y[0] ?? NaN;
    }
    expect(convertedBy(MODELS[name], stretches)).toBeCloseTo(conversion, 7);
    const whole = stretches.reduce((sum, stretch) => sum + stretch.minutes, 0);
    expect(minutesUntil(MODELS[name], conversion, stretches) / whole).toBeCloseTo(1, 6);
  });
});
