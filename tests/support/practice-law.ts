import type { SheetRow } from '../../src/cure/card.js';
import { celsius, minutes } from '../../src/cure/units.js';

/** Common practice, no source: 48 h without heat, or 60 min at 30 °C and then 90 min at 60 °C. The one Arrhenius line through both, by the shop's air; J/mol, computed with mpmath 1.3.0. */
export const PRACTICE_LAWS = [
  { ambient: 20, activationEnergy: 69246.3347487 },
  { ambient: 23, activationEnergy: 75877.1094109 },
  { ambient: 25, activationEnergy: 80920.343086 },
] as const;

const R = 8.31446261815324;
const ICE_POINT = 273.15;
const WITHOUT_HEAT = 2880;
const USUAL_ROWS = [5, 10, 20, 25, 30, 40, 45, 55, 60];

/** Rows of a sheet that follows the law of this air. */
export function practiceRows(ambient: number, temperatures: readonly number[] = USUAL_ROWS): SheetRow[] {
  const law = PRACTICE_LAWS.find((one) => one.ambient === ambient);
  if (law === undefined) throw new Error(`There is no law for ${ambient} °C.`);
  return temperatures.map((temperature) => {
    const inverse = 1 / (temperature + ICE_POINT) - 1 / (ambient + ICE_POINT);
    return { temperature: celsius(temperature), minutes: minutes(WITHOUT_HEAT * Math.exp((law.activationEnergy / R) * inverse)) };
  });
}
