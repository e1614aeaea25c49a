import { vapourPressure } from './dew-point.js';
import { minutes, type Celsius, type Minutes } from './units.js';

/** The air a sheet's figures were taken in, or the air of the shop. */
export interface DampAir {
  readonly temperature: Celsius;
  /** Relative humidity, percent. */
  readonly humidity: number;
}

/** What a sheet prints: so deep in so many minutes. */
export interface PrintedDepth {
  readonly depthMillimetres: number;
  readonly minutes: Minutes;
}

/** Water vapour in hPa against that of the reference air; a front moves so many times faster. */
export const vapourShare = (vapour: number, reference: DampAir): number => vapour / vapourOf(reference);

/** Water vapour of this air, in hPa. */
export const vapourOf = ({ temperature, humidity }: DampAir): number => vapourPressure(temperature, humidity);

/**
 * Minutes until the front is so deep. A sharp front takes its water through what has hardened already, so that its depth
 * grows with the square root of vapour pressure times time; the skin's permeability is taken as the same at every temperature.
 */
export const frontMinutes = (printed: PrintedDepth, depthMillimetres: number, vapour = 1): Minutes =>
  minutes((printed.minutes * (depthMillimetres / printed.depthMillimetres) ** 2) / vapour);
