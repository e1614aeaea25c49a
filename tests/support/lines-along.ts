import { beginLines, goAlong, type ProgressLines } from '../../src/cure/progress-lines.js';
import { gridOf, type RateGrid } from '../../src/cure/rate-grid.js';
import type { RateTable } from '../../src/cure/rate-table.js';
import type { PackedPoints, TemperaturePoint } from '../../src/cure/temperature-point.js';

export const packed = (points: readonly TemperaturePoint[]): PackedPoints => Float64Array.from(points.flatMap((point) => [point.at, point.temperature]));

/** Lines along a whole history at once. */
export function linesAlong(grid: RateGrid, [first, ...rest]: readonly TemperaturePoint[]): ProgressLines {
  if (first === undefined) throw new Error('A line needs a point.');
  const lines = beginLines(grid, first);
  goAlong(lines, packed(rest));
  return lines;
}

export const lineAlong = (table: RateTable, points: readonly TemperaturePoint[]): ProgressLines => linesAlong(gridOf(table), points);

/** Goes on to one more point. */
export function append(lines: ProgressLines, point: TemperaturePoint): ProgressLines {
  goAlong(lines, packed([point]));
  return lines;
}
