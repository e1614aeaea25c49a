import psychrolib from 'psychrolib';
import { expect } from 'vitest';
import { z } from 'zod';
import { dewPoint, vapourPressure } from '../../src/cure/dew-point.js';
import { celsius } from '../../src/cure/units.js';
import { everyCheck, kind } from '../support/reference-checks.js';

/**
 * dewM: Magnus over water, WMO-No. 8 and Sonntag, Z. Meteorol. 70 (1990) 340-344: our own formula.
 * dewA: ASHRAE Fundamentals (Hyland-Wexler) as coded in psychrolib; below 0.01 °C it gives the frost point, which lies above the
 * dew point over water that ours gives. Ours may differ from it as far as the two formulas are known to.
 * dewP: printed table, coatings-industry information sheet no. 1650 (June 2013).
 * psat: IAPWS-IF97 region 4 (coefficients from memory). psychrolib meets it; Magnus stays up to 0.31 % below.
 * margin: 3 K above the dew point is general coating practice, attributed to ISO 8502-4 and not seen in it.
 */
const humidAir = z.object({ T_C: z.number().transform(celsius), RH_pct: z.number() });
const MARGIN = 3;
const ICE_BELOW = 0.01;
/** K; above freezing on this grid, and over ice against over water. */
const FORMULAS_DIFFER = 0.034;
const FROST_ABOVE_DEW = 1.26;
/** Share of the saturation pressure, 5 to 40 °C. */
const MAGNUS_BELOW = 0.0031;

everyCheck('dew-point', [
  kind(/^dewM-/, humidAir, z.number(), (given, expected, near) => {
    near(dewPoint(given.T_C, given.RH_pct), expected);
  }),
  kind(/^dewA-/, humidAir, z.number(), (given, expected, near) => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    near(psychrolib.GetTDewPointFromRelHum(given.T_C, given.RH_pct / 100), expected);
    const above = expected - dewPoint(given.T_C, given.RH_pct);
    expect(above).toBeGreaterThan(-FORMULAS_DIFFER);
    expect(above).toBeLessThan(expected < ICE_BELOW ? FROST_ABOVE_DEW : FORMULAS_DIFFER);
  }),
  kind(/^dewP-/, humidAir, z.number(), (given, expected, near) => {
    near(dewPoint(given.T_C, given.RH_pct), expected);
  }),
  kind(/^psat-/, z.object({ T_C: z.number().transform(celsius) }), z.number(), (given, expected, near) => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    near(psychrolib.GetSatVapPres(given.T_C) / 1000, expected);
    const ours = vapourPressure(given.T_C, 100) / 10 / expected;
    expect(ours).toBeLessThan(1);
    expect(ours).toBeGreaterThan(1 - MAGNUS_BELOW);
  }),
  kind(/^margin-/, z.object({ T_air_C: z.number(), RH_pct: z.number(), T_surface_C: z.number() }), z.object({ margin_K: z.number(), pass: z.boolean() }), (given, expected, near) => {
    const margin = given.T_surface_C - dewPoint(celsius(given.T_air_C), given.RH_pct);
    near(margin, expected.margin_K);
    // Not rounded before it is compared: 20 °C, 60 % and a surface of 15.0 °C hang on the formula (ours passes, psychrolib's does not).
    expect(margin >= MARGIN).toBe(expected.pass);
  }),
]);
