import { z } from 'zod';
import { activationEnergyBetween, GAS_CONSTANT } from '../../src/cure/arrhenius.js';
import { meanKineticTemperature, rateRatio } from '../../src/cure/kinetics.js';
import { celsius, minutes, type Celsius } from '../../src/cure/units.js';
import { everyCheck, kind } from '../support/reference-checks.js';

/**
 * Gas constant: CODATA 2018/2022. Mean kinetic temperature: formula of USP <1160> (USP 29); the temperatures are our own, no
 * worked numbers of the pharmacopoeia were found. Ratios: Arrhenius' law; the doubling rule is van 't Hoff's rule of thumb.
 */
const temperatures = z.array(z.number());
const measured = (all: readonly number[], lengths?: readonly number[] | null) => all.map((temperature, index) => ({ temperature: celsius(temperature), minutes: minutes(60 * (lengths?.[index] ?? 1)) }));
const fromTo = { T1_C: z.number().transform(celsius), T2_C: z.number().transform(celsius) };

/** Activation energy of what runs so many times faster at `to`: two rows of a sheet, the hotter one shorter by that. */
const energyOf = (ratio: number, from: Celsius, to: Celsius): number =>
  activationEnergyBetween({ temperature: from, minutes: minutes(ratio) }, { temperature: to, minutes: minutes(1) }) ?? NaN;

/** A step so small that the ratio over it is the slope at its middle. */
const STEP = 0.01;

everyCheck('arrhenius-and-mkt', [
  kind(/^arr-R$/, z.object({}), z.number(), (_, expected, near) => {
    near(GAS_CONSTANT, expected);
  }),
  kind(/^mkt-(?!.*codata)/, z.object({ temperatures_C: temperatures, durations: z.array(z.number()).nullable(), dH_over_R_K: z.number() }), z.number(), (given, expected, near) => {
    near(meanKineticTemperature(measured(given.temperatures_C, given.durations), given.dH_over_R_K) ?? NaN, expected);
  }),
  kind(/^mkt-.*codata$/, z.object({ temperatures_C: temperatures, dH_J_per_mol: z.number() }), z.number(), (given, expected, near) => {
    near(meanKineticTemperature(measured(given.temperatures_C), given.dH_J_per_mol / GAS_CONSTANT) ?? NaN, expected);
  }),
  kind(/^q10-\d+-\d+$/, z.object({ Q10: z.number(), ...fromTo }), z.number(), (given, expected, near) => {
    near(energyOf(given.Q10, given.T1_C, given.T2_C), expected);
  }),
  kind(/^q10-local-/, z.object({ T_K: z.number() }), z.number(), (given, expected, near) => {
    const middle = given.T_K - 273.15;
    near(energyOf(2 ** (STEP / 10), celsius(middle - STEP / 2), celsius(middle + STEP / 2)), expected);
  }),
  kind(/^(?:q10-of|ratio)-/, z.object({ Ea: z.number(), ...fromTo }), z.number(), (given, expected, near) => {
    near(rateRatio(given.Ea, given.T1_C, given.T2_C), expected);
  }),
]);
