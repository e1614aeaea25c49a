import { describe, expect, it } from 'vitest';
import { activationEnergyBetween, expectedRateAt, fittedActivationEnergy, GAS_CONSTANT } from '../../../src/cure/arrhenius.js';
import { minutesAt } from '../../../src/cure/rows.js';
import { celsius, kelvinFromCelsius, minutes } from '../../../src/cure/units.js';
import { rows } from '../../support/joint.js';
import { definedRate } from '../../support/expected-oracle.js';
import { PRACTICE_LAWS, practiceRows } from '../../support/practice-law.js';

const HANDLING = rows({ 15: 450, 20: 300, 30: 150, 40: 75, 65: 25 });
const row = (temperature: number, length: number) => ({ temperature: celsius(temperature), minutes: minutes(length) });
const rateAt = (given: typeof HANDLING, temperature: number): number => expectedRateAt(given, celsius(temperature));
const apart = (value: number, expected: number): number => Math.abs(value / expected - 1);

describe('the gas constant and the ice point', () => {
  it('are those of CODATA 2018/2022 and of the Celsius scale', () => {
    expect(GAS_CONSTANT).toBe(8.31446261815324);
    expect(kelvinFromCelsius(celsius(23))).toBeCloseTo(296.15, 12);
  });
});

describe('the activation energy between two rows', () => {
  // Arrhenius law, computed with mpmath 1.3.0; that a rate doubles in 10 K is the rule of thumb of van 't Hoff.
  it.each([
    [25, 35, 52948.8621657],
    [20, 30, 51216.1722241],
  ])('of a wait that halves from %d to %d °C is %d J/mol', (cold, hot, expected) => {
    expect(apart(activationEnergyBetween(row(cold, 200), row(hot, 100)) ?? NaN, expected)).toBeLessThan(1e-8);
    expect(apart(activationEnergyBetween(row(hot, 100), row(cold, 200)) ?? NaN, expected)).toBeLessThan(1e-8);
  });

  it('nears R T² ln 2 / 10 K, the local form of the doubling rule, for rows close together', () => {
    const [half, factor] = [0.005, 2 ** (0.005 / 10)];
    const energy = activationEnergyBetween(row(25 - half, 100 * factor), row(25 + half, 100 / factor)) ?? NaN;
    expect(apart(energy, 51230.5800899)).toBeLessThan(1e-8);
  });

  // Arrhenius law, computed with mpmath 1.3.0.
  it.each([
    [25, 35, 2.96960246895, 83144],
    [23, 60, 14.9729579323, 60000],
  ])('of a rate that grows from %d to %d °C by %d is %d J/mol', (cold, hot, ratio, expected) => {
    expect(apart(activationEnergyBetween(row(cold, ratio), row(hot, 1)) ?? NaN, expected)).toBeLessThan(1e-8);
  });

  it('does not exist for two rows at one temperature', () => {
    expect(activationEnergyBetween(row(20, 200), row(20, 100))).toBeNull();
  });
});

describe('the fitted activation energy', () => {
  it.each(PRACTICE_LAWS)('finds the law behind rows that follow one: $activationEnergy J/mol', ({ ambient, activationEnergy }) => {
    expect(apart(fittedActivationEnergy(practiceRows(ambient)) ?? NaN, activationEnergy)).toBeLessThan(1e-9);
  });

  it('is that of two rows where there are only two', () => {
    const two = [row(20, 300), row(60, 25)];
    expect(apart(fittedActivationEnergy(two) ?? NaN, activationEnergyBetween(row(20, 300), row(60, 25)) ?? NaN)).toBeLessThan(1e-12);
  });

  it('lies between those of the neighbours where rows do not follow one law', () => {
    const between = HANDLING.slice(1).map((hot, index) => activationEnergyBetween(HANDLING[index] ?? hot, hot) ?? NaN);
    const fitted = fittedActivationEnergy(HANDLING) ?? NaN;
    expect(fitted).toBeGreaterThan(Math.min(...between));
    expect(fitted).toBeLessThan(Math.max(...between));
  });

  it.each([[[]], [[row(20, 300)]], [[row(20, 300), row(20, 310)]]])('does not exist without two temperatures', (given) => {
    expect(fittedActivationEnergy(given)).toBeNull();
  });
});

describe('the expected rate', () => {
  // Common practice, no source; law computed with mpmath 1.3.0.
  it.each([
    [20, { 5: 13328.2054, 10: 7854.98852, 20: 2880, 25: 1788.45236, 30: 1128.204344, 40: 469.220828, 45: 308.925599, 55: 139.124075, 60: 95.05521255 }],
    [23, { 5: 21156.4002, 10: 11852.9785, 20: 3947.73796, 25: 2342.17734, 30: 1413.74252, 40: 540.599537, 45: 341.956036, 55: 142.673637, 60: 93.98894171 }],
    [25, { 5: 30112.303, 10: 16233.2676, 20: 5025.63249, 25: 2880, 30: 1681.010553, 40: 603.012991, 45: 369.999267, 55: 145.660614, 60: 93.3312553 }],
  ])('of the law for 48 h at %d °C gives the minutes of the law', (ambient, waits) => {
    // Only the ends are printed: everything between comes from the straight line in 1/T.
    const printed = practiceRows(ambient, [0, 65]);
    for (const [temperature, wait] of Object.entries(waits)) expect(apart(1 / rateAt(printed, Number(temperature)), wait), `${temperature} °C`).toBeLessThan(1e-6);
  });

  it('meets every printed row', () => {
    for (const one of HANDLING) expect(rateAt(HANDLING, one.temperature)).toBe(1 / one.minutes);
  });

  it.each([14.9, 0, -40])('is nothing at %d °C, below the coldest row', (temperature) => {
    expect(rateAt(HANDLING, temperature)).toBe(0);
  });

  it.each([66, 250])('has no bonus at %d °C, above the hottest row', (temperature) => {
    expect(rateAt(HANDLING, temperature)).toBe(1 / 25);
  });

  it('is never below the safe side', () => {
    for (let temperature = 15; temperature <= 66; temperature += 0.37) {
      expect(1 / rateAt(HANDLING, temperature)).toBeLessThanOrEqual((minutesAt(HANDLING, celsius(temperature)) ?? NaN) * (1 + 1e-12));
    }
  });

  it('follows its definition, in whatever order the rows are written', () => {
    for (let temperature = 10; temperature <= 70; temperature += 0.73) {
      expect(rateAt([...HANDLING].reverse(), temperature)).toBeCloseTo(definedRate(HANDLING, temperature), 14);
    }
  });

  it('is nothing without rows, and the longer wait where two rows share a temperature', () => {
    expect(rateAt([], 20)).toBe(0);
    expect(rateAt([row(20, 100), row(20, 300), row(40, 50)], 20)).toBe(1 / 300);
  });
});
