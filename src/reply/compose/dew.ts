import { dewMargin, LEAST_DEW_MARGIN } from '../../cure/dew-margin.js';
import { celsius, type Celsius } from '../../cure/units.js';
import type { Outlook } from '../../repair/outlook.js';
import { sayDew } from '../catalogue/dew.js';
import { degrees, tidy, type Setting } from './words.js';

/** Where moisture settles, and how warm metal has to be at the least. */
export function leastMetal({ point, frost }: { readonly point: Celsius; readonly frost: boolean }, setting: Setting): string {
  const value = degrees(point, setting);
  return frost ? sayDew(setting, 'frost-point', { value }) : sayDew(setting, 'dew-point', { value, least: atLeast(celsius(point + LEAST_DEW_MARGIN), setting) });
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
  return sayDew(setting, margin < 0 ? 'below' : 'above', { difference: apart(Math.abs(margin), setting), point: dew.frost ? 'frost' : 'dew', value: degrees(dew.point, setting) });
}

/** Too close: what was read and what is needed. */
export function tooClose(outlook: Outlook, setting: Setting): string {
  const margin = marginWords(outlook, setting);
  const needed = apart(LEAST_DEW_MARGIN, setting);
  return margin === null ? sayDew(setting, 'too-close-unread', { needed }) : sayDew(setting, 'too-close', { margin, needed });
}

/** A difference of two temperatures. */
function apart(difference: number, setting: Setting): string {
  const { unit } = setting.shop;
  return `${tidy(unit === 'F' ? Math.floor(difference * 18 + DUST) / 10 : difference, setting)} °${unit}`;
}

/** Floating dust in tenths. */
const DUST = 1e-6;

/** A least temperature is rounded up, in the unit people read. */
function atLeast(value: Celsius, setting: Setting): string {
  const { unit } = setting.shop;
  const shown = unit === 'F' ? (value * 9) / 5 + 32 : value;
  return `${tidy(Math.ceil(shown * 10 - DUST) / 10, setting)} °${unit}`;
}
