import type { AirStep } from './air.js';
import { heatStretches, lowestOf, type BetweenReadings, type HeatStretch } from './heat-stretches.js';
import type { JointHistory, JointStep } from './history.js';
import { instant, type Celsius, type Instant } from './units.js';

/**
 * The joint's temperature on the safe side (rules R6, R7): air until the first reading, the colder of two readings
 * over the whole interval between them, the last reading provisionally after it, air wherever heat is not confirmed.
 * `maximum` is the card's highest panel temperature: above it nothing counts (rule R2). Events and air in order of time.
 */
export function jointSteps(history: JointHistory, maximum: Celsius | null, between: BetweenReadings = 'colder'): JointStep[] {
  const { air } = history;
  const stretches = heatStretches(history.heat, history.start, between);
  const steps: JointStep[] = [];
  let [heatHere, airHere] = [-1, -1];
  for (let at: number = history.start; at < Infinity; at = Math.min(beginOf(stretches, heatHere + 1), beginOf(air, airHere + 1))) {
    while (beginOf(stretches, heatHere + 1) <= at) heatHere += 1;
    while (beginOf(air, airHere + 1) <= at) airHere += 1;
    const step = stepAt(instant(at), stretches[heatHere], air[airHere], maximum);
    const last = steps.at(-1);
    if (last === undefined || last.temperature !== step.temperature || last.source !== step.source) steps.push(step);
  }
  return steps;
}

const beginOf = (list: readonly { readonly from: Instant }[], index: number): number => list[index]?.from ?? Infinity;

function stepAt(at: Instant, stretch: HeatStretch | undefined, around: AirStep | undefined, maximum: Celsius | null): JointStep {
  if (stretch?.reading == null) {
    const temperature = around?.temperature ?? null;
    return { from: at, temperature: temperature === null ? null : lowestOf(stretch?.cap ?? null, temperature), source: around?.source ?? 'unknown air' };
  }
  if (maximum !== null && stretch.reading > maximum) return { from: at, temperature: null, source: 'over the maximum' };
  return { from: at, temperature: lowestOf(stretch.cap, stretch.reading), source: stretch.cap === null ? 'reading' : 'colder of two readings' };
}
