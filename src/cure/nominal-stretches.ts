import type { CourseStretch } from './expected-stretches.js';
import type { JointHistory, LampStretch } from './history.js';
import { lampStretches } from './lamp-stretches.js';
import type { Celsius, Instant } from './units.js';

/**
 * The heat as it was set, without gaps from the start: the lamp's setting while it is believed on, the shop's air
 * elsewhere. A pad runs no recipe, so there the air counts; what was read does not enter.
 */
export function nominalStretches({ start, heat, air }: JointHistory): CourseStretch[] {
  const lamp = lampStretches(heat).filter((one) => one.heater === 'lamp' && one.setting !== null);
  const edges = new Set<Instant>([start, ...air.map((step) => step.from), ...lamp.flatMap((one) => (one.to === null ? [one.from] : [one.from, one.to]))]);
  const moments = [...edges].filter((at) => at >= start).sort((one, other) => one - other);
  return moments.map((from, index): CourseStretch => {
    const step = air.findLast((one) => one.from <= from) ?? air[0];
    return { from, to: moments[index + 1] ?? null, course: steady(settingAt(lamp, from) ?? step?.temperature ?? null) };
  });
}

const settingAt = (lamp: readonly LampStretch[], at: Instant): Celsius | null => lamp.find((one) => one.from <= at && (one.to === null || at < one.to))?.setting ?? null;

const steady = (temperature: Celsius | null): CourseStretch['course'] => (temperature === null ? { course: 'unknown' } : { course: 'steady', temperature });
