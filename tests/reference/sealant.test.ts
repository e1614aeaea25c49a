import psychrolib from 'psychrolib';
import { expect } from 'vitest';
import { z } from 'zod';
import { progressBy } from '../../src/cure/laws.js';
import { frontMinutes, vapourOf, vapourShare, type DampAir, type PrintedDepth } from '../../src/cure/moisture-front.js';
import { celsius, minutes, minutesBetween, type Minutes } from '../../src/cure/units.js';
import { cardNamed } from '../support/card-shelf.js';
import { steadyAir } from '../support/joint.js';
import { everyCheck, kind } from '../support/reference-checks.js';
import { STARTED } from '../support/steady-stretches.js';

/**
 * Front model: Comyn, Int. J. Adhesion & Adhesives 18 (1998) 247 (abstract: sharp front; the equation from memory).
 * Reference air 23 °C and 50 %: ISO 291. Vapour pressures of the checks: IAPWS-IF97, which psychrolib meets; our engine's Magnus
 * formula differs from it by the share below. 3 mm in 24 h: common practice, no source.
 */
const REFERENCE: DampAir = { temperature: celsius(23), humidity: 50 };
const PRINTED: PrintedDepth = { depthMillimetres: 3, minutes: minutes(1440) };
/** Ratio of two Magnus pressures against the ratio of two IF97 pressures, 5 to 30 °C. */
const FORMULAS_DIFFER = 0.0021;
const humidAir = { T_C: z.number().transform(celsius), RH_pct: z.number() };

/** Minutes until a bead has hardened so deep in this air, as our engine counts them. */
function countedMinutes(printed: PrintedDepth, depthMillimetres: number, { temperature, humidity }: DampAir): Minutes {
  const air = steadyAir(STARTED, temperature, humidity);
  const { due } = progressBy({ law: 'depth-root', ...printed, reference: REFERENCE }, cardNamed('S1'), { start: STARTED, heat: [], air, depthMillimetres });
  if (due === null) throw new Error('The engine gives no time.');
  return minutesBetween(STARTED, due);
}

everyCheck('sealant', [
  kind(/^seal-\d/, z.object(humidAir), z.object({ p_kPa: z.number(), depth_factor: z.number(), time_factor: z.number() }), (given, expected, near) => {
    const air = { temperature: given.T_C, humidity: given.RH_pct };
    psychrolib.SetUnitSystem(psychrolib.SI);
    const kilopascal = (at: DampAir): number => (psychrolib.GetSatVapPres(at.temperature) * at.humidity) / 100 / 1000;
    near(kilopascal(air), expected.p_kPa);
    near(kilopascal(REFERENCE) / kilopascal(air), expected.time_factor);
    near(Math.sqrt(kilopascal(air) / kilopascal(REFERENCE)), expected.depth_factor);

    const apart = (1 / vapourShare(vapourOf(air), REFERENCE)) / expected.time_factor;
    expect(Math.abs(apart - 1)).toBeLessThan(FORMULAS_DIFFER);
    // Damper than the reference gives no bonus: the engine waits the printed time, later than the model.
    expect(countedMinutes(PRINTED, PRINTED.depthMillimetres, air) / PRINTED.minutes).toBeCloseTo(Math.max(1, apart * expected.time_factor), 9);
  }),
  kind(/^seal-t-/, z.object({ ...humidAir, ref_depth_mm: z.number(), ref_h: z.number(), depth_mm: z.number() }), z.number(), (given, expected, near) => {
    const air = { temperature: given.T_C, humidity: given.RH_pct };
    const printed = { depthMillimetres: given.ref_depth_mm, minutes: minutes(given.ref_h * 60) };
    near(frontMinutes(printed, given.depth_mm, vapourShare(vapourOf(air), REFERENCE)) / 60, expected);
    const counted = countedMinutes(printed, given.depth_mm, air);
    expect(counted / 60).toBeGreaterThanOrEqual(expected * (1 - 1e-6));
    // Later than the model only where the air is damper than the reference.
    if (vapourShare(vapourOf(air), REFERENCE) <= 1) near(counted / 60, expected);
  }),
]);
