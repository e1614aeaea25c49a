import { describe, expect, it } from 'vitest';
import { kineticMinutes, meanKineticTemperature, rateRatio, stagedShare, type KineticLaw } from '../../../src/cure/kinetics.js';
import { celsius, minutes } from '../../../src/cure/units.js';

/** Known answers stand in tests/reference; here are the edges. The figures are our own. */
const LAW: KineticLaw = { temperature: celsius(20), minutes: minutes(600), energy: 60_000 };
const stage = (temperature: number, length: number) => ({ temperature: celsius(temperature), minutes: minutes(length) });

describe('a kinetic law', () => {
  it('takes its own minutes at its own temperature, fewer when hotter, more when colder', () => {
    expect(kineticMinutes(LAW, celsius(20))).toBe(600);
    expect(kineticMinutes(LAW, celsius(40))).toBeLessThan(600);
    expect(kineticMinutes(LAW, celsius(0))).toBeGreaterThan(600);
  });

  it('is as fast at a temperature as at the same temperature', () => {
    expect(rateRatio(60_000, celsius(23), celsius(23))).toBe(1);
    expect(rateRatio(60_000, celsius(23), celsius(60)) * rateRatio(60_000, celsius(60), celsius(23))).toBeCloseTo(1, 12);
  });

  it('earns nothing without a stage, one half in half the time, more than one in too long', () => {
    expect([[], [stage(20, 300)], [stage(20, 300), stage(20, 900)]].map((stages) => stagedShare(LAW, stages))).toEqual([0, 0.5, 2]);
  });
});

describe('the mean kinetic temperature', () => {
  it('lies above the mean, and counts how long', () => {
    expect(meanKineticTemperature([stage(20, 60), stage(30, 60)], 10_000)).toBeGreaterThan(25);
    expect(meanKineticTemperature([stage(20, 60), stage(30, 6_000)], 10_000)).toBeCloseTo(29.93, 1);
  });

  it('is none without a minute', () => {
    expect(meanKineticTemperature([], 10_000)).toBeNull();
    expect(meanKineticTemperature([stage(20, 0)], 10_000)).toBeNull();
  });
});
