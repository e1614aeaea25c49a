import { celsius, type Celsius } from './units.js';

/** Magnus coefficients over water, 17.62 and 243.12 °C, as in WMO-No. 8 (rule R24). */
const A = 17.62;
const B = 243.12;
const P0_HPA = 6.112;

/** Saturation vapour pressure times relative humidity, in hPa. */
export const vapourPressure = (temperature: Celsius, humidityPercent: number): number =>
  (humidityPercent / 100) * P0_HPA * Math.exp((A * temperature) / (B + temperature));

/** Dew point over water by the Magnus formula. */
export function dewPoint(temperature: Celsius, humidityPercent: number): Celsius {
  const gamma = Math.log(humidityPercent / 100) + (A * temperature) / (B + temperature);
  return celsius((B * gamma) / (A - gamma));
}
