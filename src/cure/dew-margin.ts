import { dewPoint, frostPoint } from './dew-point.js';
import type { Celsius } from './units.js';

/** Metal nearer than this to the point at which water settles may be damp already (rule R24; common practice, no source). K. */
export const LEAST_DEW_MARGIN = 3;

/** Floating dust in a difference of two temperatures, K. */
const DUST = 1e-9;

/** How far metal is from getting damp. */
export interface DewMargin {
  /** Where the water of this air settles: as dew, or below 0 °C as frost. Not rounded. */
  readonly point: Celsius;
  readonly frost: boolean;
  /** Metal minus point in K, to the nearest 0.1; one that is too close never reads 3.0. Negative: water settles on it. */
  readonly margin: number;
  readonly verdict: 'enough' | 'too close';
}

/**
 * Metal against the dew point of the air (°C, relative humidity in percent). What decides is the margin before rounding: 2.999
 * is too close and reads 2.9, 3.000 is enough. Below 0 °C water settles as frost, which begins higher than dew would:
 * the margin errs to the careful side. Null where the humidity is not above 0 and at most 100: no shop air is so dry, a
 * meter that says so is wrong, and nobody knows the margin.
 */
export function dewMargin(metal: Celsius, air: Celsius, humidityPercent: number): DewMargin | null {
  if (!(humidityPercent > 0 && humidityPercent <= 100)) return null;
  const dew = dewPoint(air, humidityPercent);
  const frost = dew < 0;
  const point = frost ? frostPoint(air, humidityPercent) : dew;
  const exact = metal - point;
  const enough = exact > LEAST_DEW_MARGIN - DUST;
  const nearest = Math.round(exact * 10) / 10;
  return { point, frost, margin: enough ? nearest : Math.min(nearest, LEAST_DEW_MARGIN - 0.1), verdict: enough ? 'enough' : 'too close' };
}
