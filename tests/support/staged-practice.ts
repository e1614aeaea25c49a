import { fitStagedLaw } from '../../src/cure/fit-staged-law.js';
import { kineticMinutes, type KineticLaw } from '../../src/cure/kinetics.js';
import { integral } from '../../src/cure/quadrature.js';
import { celsius, minutes, type Celsius } from '../../src/cure/units.js';

/**
 * Common practice, no source: final strength after 48 h without heat, or after 60 min at 30 °C and then 90 min at 60 °C.
 * The line through both, for a shop whose air has this temperature.
 */
export function practiceLaw(ambient: Celsius): KineticLaw {
  const stage = (temperature: Celsius, length: number) => ({ temperature, minutes: minutes(length) });
  const law = fitStagedLaw([{ stages: [stage(ambient, 2880)] }, { stages: [stage(celsius(30), 60), stage(celsius(60), 90)] }]);
  if (law === null) throw new Error('no line through the points');
  return law;
}

/** What a stretch earns while the temperature goes steadily from one value to another. */
export const rampShare = (law: KineticLaw, from: Celsius, to: Celsius, length: number): number =>
  integral((minute) => 1 / kineticMinutes(law, celsius(from + ((to - from) * minute) / length)), 0, length);
