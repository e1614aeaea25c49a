import type { SheetRow } from './card.js';
import { kelvinFromCelsius, type Celsius } from './units.js';

/** J/(mol K); CODATA 2018 and 2022, exact since the SI revision of 2019. */
export const GAS_CONSTANT = 8.31446261815324;

/** A straight line of ln(minutes) against 1/T: minutes = exp(intercept + slope / T), T in kelvin. */
export interface ArrheniusLine {
  readonly intercept: number;
  /** Activation energy / gas constant, in kelvin. */
  readonly slope: number;
}

/**
 * Rows coldest first, each temperature once. Where two rows share a temperature the longer wait stays.
 */
export function arrheniusRows(rows: readonly SheetRow[]): SheetRow[] {
  const sorted = [...rows].sort((one, other) => one.temperature - other.temperature || other.minutes - one.minutes);
  return sorted.filter((row, index) => row.temperature !== sorted[index - 1]?.temperature);
}

/** The law that meets both rows; their temperatures differ. */
export function lineThrough(one: SheetRow, other: SheetRow): ArrheniusLine {
  const inverse = 1 / kelvinFromCelsius(one.temperature);
  const slope = Math.log(other.minutes / one.minutes) / (1 / kelvinFromCelsius(other.temperature) - inverse);
  return { slope, intercept: Math.log(one.minutes) - slope * inverse };
}

/** Share of the whole wait that one minute at this temperature earns by the law. */
export const rateOn = (line: ArrheniusLine, temperature: Celsius): number => Math.exp(-line.intercept - line.slope / kelvinFromCelsius(temperature));

/**
 * Share of the whole wait that one minute at a steady temperature is expected to earn: Arrhenius between the rows,
 * nothing below the coldest row, no bonus above the hottest. It lies above the *sure* rate of `minutesAt`.
 */
export function expectedRateAt(rows: readonly SheetRow[], temperature: Celsius): number {
  const sorted = arrheniusRows(rows);
  const next = sorted.findIndex((row) => row.temperature >= temperature);
  const hot = next === -1 ? sorted.at(-1) : sorted[next];
  if (hot === undefined) return 0;
  if (next === -1 || hot.temperature === temperature) return 1 / hot.minutes;
  const cold = sorted[next - 1];
  return cold === undefined ? 0 : rateOn(lineThrough(cold, hot), temperature);
}

/** Activation energy in J/mol between two rows, or null where their temperatures do not differ. */
export function activationEnergyBetween(one: SheetRow, other: SheetRow): number | null {
  return one.temperature === other.temperature ? null : lineThrough(one, other).slope * GAS_CONSTANT;
}

/** Activation energy in J/mol of the least-squares line of ln(minutes) on 1/T, or null for fewer than two temperatures. */
export function fittedActivationEnergy(rows: readonly SheetRow[]): number | null {
  if (new Set(rows.map((row) => row.temperature)).size < 2) return null;
  const inverses = rows.map((row) => 1 / kelvinFromCelsius(row.temperature));
  const logs = rows.map((row) => Math.log(row.minutes));
  const [middle, level] = [mean(inverses), mean(logs)];
  const across = inverses.map((inverse, index) => (inverse - middle) * ((logs[index] ?? level) - level));
  return (GAS_CONSTANT * mean(across)) / mean(inverses.map((inverse) => (inverse - middle) ** 2));
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
