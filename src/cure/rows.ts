import type { SheetRow } from './card.js';
import { minutes, type Celsius, type Minutes } from './units.js';

const byTemperature = (rows: readonly SheetRow[]): SheetRow[] => [...rows].sort((a, b) => a.temperature - b.temperature);

/**
 * Minutes a milestone takes at a steady panel temperature (rule R2).
 * Between rows a straight line in ln(minutes) against °C, which lies above an Arrhenius curve and so errs late.
 * Below the coldest row nothing counts (null); above the hottest row there is no bonus.
 */
export function minutesAt(rows: readonly SheetRow[], temperature: Celsius): Minutes | null {
  const sorted = byTemperature(rows);
  const upper = sorted.findIndex((row) => row.temperature >= temperature);
  if (upper === -1) return sorted.at(-1)?.minutes ?? null;
  const hot = sorted[upper];
  if (hot === undefined) return null;
  if (hot.temperature === temperature) return hot.minutes;
  const cold = sorted[upper - 1];
  if (cold === undefined) return null;
  const part = (temperature - cold.temperature) / (hot.temperature - cold.temperature);
  return minutes(Math.exp(Math.log(cold.minutes) + part * (Math.log(hot.minutes) - Math.log(cold.minutes))));
}

/** Open time at a temperature (rule R3): the next hotter row; hotter than the hottest row: null, do not start. */
export function openMinutesAt(rows: readonly SheetRow[], temperature: Celsius): Minutes | null {
  return byTemperature(rows).find((row) => row.temperature >= temperature)?.minutes ?? null;
}

/** The coldest temperature at which anything counts. */
export function coldestRow(rows: readonly SheetRow[]): Celsius | null {
  return byTemperature(rows)[0]?.temperature ?? null;
}

/** The shortest printed time: what counts when the temperature is not known at all. */
export function shortestMinutes(rows: readonly SheetRow[]): Minutes | null {
  return byTemperature(rows).at(-1)?.minutes ?? null;
}
