import type { Celsius, Instant } from './units.js';

/** The temperature at a moment; between two points it changes in a straight line. Two points at one instant are a jump. */
export interface TemperaturePoint {
  readonly at: Instant;
  readonly temperature: Celsius;
}

/** Moments (milliseconds since 1970-01-01T00:00Z) and temperatures (°C), one after the other, in order of time. */
export type PackedPoints = Float64Array;
