import { dewMargin, LEAST_DEW_MARGIN } from '../../cure/dew-margin.js';
import { celsius, type Celsius } from '../../cure/units.js';
import type { Outlook } from '../../repair/outlook.js';
import { degrees, tidy, type Setting } from './words.js';

/** Where moisture settles, and how warm metal has to be at the least. */
export function leastMetal({ point, frost }: { readonly point: Celsius; readonly frost: boolean }, setting: Setting): string {
  if (frost) return `Frost point **${degrees(point, setting)}**: moisture settles as frost, which nobody can wipe dry. **Warm the metal first.**`;
  return `Dew point ${degrees(point, setting)}: metal at least **${atLeast(celsius(point + LEAST_DEW_MARGIN), setting)}**.`;
}

/** The same for air that was read; null without a humidity. */
export function leastMetalIn(air: { readonly value: Celsius; readonly humidity: number | null }, setting: Setting): string | null {
  const settles = air.humidity === null ? null : dewMargin(air.value, air.value, air.humidity);
  return settles === null ? null : leastMetal(settles, setting);
}

/** `2.5 °C above the dew point of 12.4 °C`. */
export function marginWords({ dew }: Outlook, setting: Setting): string | null {
  if (dew?.metal == null) return null;
  const { margin } = dew.metal;
  const what = `the ${dew.frost ? 'frost' : 'dew'} point of ${degrees(dew.point, setting)}`;
  return margin < 0 ? `${apart(-margin, setting)} below ${what}` : `${apart(margin, setting)} above ${what}`;
}

/** Too close: what was read and what is needed. */
export const tooClose = (outlook: Outlook, setting: Setting): string =>
  `metal ${marginWords(outlook, setting) ?? 'too close to the dew point'}, ${apart(LEAST_DEW_MARGIN, setting)} needed`;

/** A difference of two temperatures. */
function apart(difference: number, { shop }: Setting): string {
  return shop.unit === 'F' ? `${Math.floor(difference * 18 + DUST) / 10} °F` : `${tidy(difference)} °C`;
}

/** Floating dust in tenths. */
const DUST = 1e-6;

/** A least temperature is rounded up, in the unit people read. */
function atLeast(value: Celsius, { shop }: Setting): string {
  const shown = shop.unit === 'F' ? (value * 9) / 5 + 32 : value;
  return `${Math.ceil(shown * 10 - DUST) / 10} °${shop.unit}`;
}
