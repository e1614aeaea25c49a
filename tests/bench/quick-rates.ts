import type { SheetRow } from '../../src/cure/card.js';
import { celsius, kelvinFromCelsius } from '../../src/cure/units.js';

/** Rates of all milestones at a temperature, written into an array. */
export type Rates = (temperature: number, into: Float64Array) => void;

interface Curve {
  readonly temperatures: Float64Array;
  /** Logarithms of the rates at the rows, and their slopes against 1/T up to the next row. */
  readonly logs: Float64Array;
  readonly inverses: Float64Array;
  readonly slopes: Float64Array;
}

/** As a caller of a solver would write them for speed: one logarithm and one slope per row, taken once, one 1/T for all milestones. */
export function quickRates(milestones: readonly (readonly SheetRow[])[]): Rates {
  const curves = milestones.map(curveOf);
  return (temperature, into) => {
    const inverse = 1 / kelvinFromCelsius(celsius(temperature));
    for (let index = 0; index < curves.length; index += 1) into[index] = rateOn(curves[index], temperature, inverse);
  };
}

function curveOf(rows: readonly SheetRow[]): Curve {
  const inverses = Float64Array.from(rows, (row) => 1 / kelvinFromCelsius(row.temperature));
  const logs = Float64Array.from(rows, (row) => -Math.log(row.minutes));
  const slopes = logs.map((log, index) => (at(logs, index + 1) - log) / (at(inverses, index + 1) - at(inverses, index)));
  return { temperatures: Float64Array.from(rows, (row) => row.temperature), logs, inverses, slopes };
}

function rateOn(curve: Curve | undefined, temperature: number, inverse: number): number {
  if (curve === undefined || temperature < at(curve.temperatures, 0)) return 0;
  const last = curve.temperatures.length - 1;
  let row = 0;
  while (row < last && temperature > at(curve.temperatures, row + 1)) row += 1;
  return row === last ? Math.exp(at(curve.logs, last)) : Math.exp(at(curve.logs, row) + (inverse - at(curve.inverses, row)) * at(curve.slopes, row));
}

const at = (numbers: Float64Array, index: number): number => numbers[index] ?? NaN;
