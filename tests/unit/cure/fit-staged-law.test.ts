import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitStagedLaw, type StagedPoint } from '../../../src/cure/fit-staged-law.js';
import { kineticMinutes, stagedShare, type KineticLaw } from '../../../src/cure/kinetics.js';
import { celsius, minutes } from '../../../src/cure/units.js';

const point = (...stages: readonly (readonly [number, number])[]): StagedPoint => ({ stages: stages.map(([temperature, length]) => ({ temperature: celsius(temperature), minutes: minutes(length) })) });
const shares = (law: KineticLaw | null, points: readonly StagedPoint[]): number[] => (law === null ? [] : points.map((one) => stagedShare(law, one.stages)));

describe('the law through staged points', () => {
  it('meets two points exactly, also one of several stages', () => {
    // Common practice, no source; the energy was computed with mpmath 1.3.0.
    const points = [point([23, 2880]), point([30, 60], [60, 90])];
    const law = fitStagedLaw(points);
    expect(law?.energy).toBeCloseTo(75_877.1094109, 4);
    for (const share of shares(law, points)) expect(share).toBeCloseTo(1, 11);
  });

  it('finds a law again from points on it', () => {
    fc.assert(
      fc.property(fc.double({ min: 30_000, max: 120_000, noNaN: true }), fc.double({ min: 5, max: 20_000, noNaN: true }), fc.array(fc.integer({ min: 0, max: 80 }), { minLength: 2, maxLength: 6 }), (energy, length, temperatures) => {
        fc.pre(Math.max(...temperatures) - Math.min(...temperatures) >= 1);
        const law: KineticLaw = { temperature: celsius(20), minutes: minutes(length), energy };
        const found = fitStagedLaw(temperatures.map((temperature) => point([temperature, kineticMinutes(law, celsius(temperature))])));
        expect((found?.energy ?? NaN) / energy).toBeCloseTo(1, 5);
        expect((found === null ? NaN : kineticMinutes(found, celsius(40))) / kineticMinutes(law, celsius(40))).toBeCloseTo(1, 5);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('undercuts no point where they do not lie on one line, and touches one of them', () => {
    const points = [point([15, 450]), point([20, 300]), point([30, 150]), point([40, 75]), point([65, 25]), point([30, 30], [65, 15])];
    const found = shares(fitStagedLaw(points), points);
    expect(found).toHaveLength(points.length);
    expect(Math.max(...found)).toBeCloseTo(1, 12);
    expect(Math.max(...found)).toBeLessThanOrEqual(1 + 1e-12);
    expect(Math.min(...found)).toBeLessThan(0.95);
  });

  it.each<[string, readonly StagedPoint[]]>([
    ['no point', []],
    ['one point', [point([23, 2880])]],
    ['one temperature', [point([23, 2880]), point([23, 2500])]],
    ['hotter that is slower', [point([20, 100]), point([60, 500])]],
    ['a point without stages', [point([23, 2880]), point()]],
    ['a stage without minutes', [point([23, 2880]), point([60, 0])]],
  ])('is none through %s', (_name, points) => {
    expect(fitStagedLaw(points)).toBeNull();
  });
});
