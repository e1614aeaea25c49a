import type { HeatedSpan } from './heated-spans.js';
import type { TemperaturePoint } from './temperature-point.js';
import { minutesBetween, type Minutes } from './units.js';
import { timeConstantFrom } from './warm-up.js';

/**
 * Minutes. Two readings that say something else were not taken while the metal warmed up: it stood already, or something
 * else warmed it. Common practice, no source.
 */
const PLAUSIBLE = { least: 2, most: 90 } as const;

/**
 * How fast the joint warmed up in this span, from the two neighbouring readings between which it warmed most; null where
 * they show no warm-up, or one that metal does not do.
 */
export function learntConstant({ setting, readings }: HeatedSpan): Minutes | null {
  const steepest = readings.slice(1).reduce<Pair | null>((most, second, index) => warmer(most, { first: readings[index] ?? second, second }), null);
  if (setting === null || steepest === null) return null;
  const { first, second } = steepest;
  const constant = timeConstantFrom(first.temperature, second.temperature, minutesBetween(first.at, second.at), setting);
  return constant === null || constant < PLAUSIBLE.least || constant > PLAUSIBLE.most ? null : constant;
}

interface Pair {
  readonly first: TemperaturePoint;
  readonly second: TemperaturePoint;
}

const rise = ({ first, second }: Pair): number => second.temperature - first.temperature;

const warmer = (one: Pair | null, other: Pair): Pair => (one === null || rise(other) > rise(one) ? other : one);
