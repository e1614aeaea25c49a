import { celsius, type Celsius } from './units.js';

/** Magnus coefficients over water (17.62 and 243.12 °C, rule R24) and over ice (22.46 and 272.62 °C), as in WMO-No. 8. */
const WATER = { a: 17.62, b: 243.12 } as const;
const ICE = { a: 22.46, b: 272.62 } as const;
const P0_HPA = 6.112;

/** Saturation vapour pressure over water times relative humidity, in hPa. */
export const vapourPressure = (temperature: Celsius, humidityPercent: number): number =>
  (humidityPercent / 100) * P0_HPA * Math.exp((WATER.a * temperature) / (WATER.b + temperature));

/** Dew point over water by the Magnus formula; humidity in percent, more than 0. */
export const dewPoint = (temperature: Celsius, humidityPercent: number): Celsius => pointOver(WATER, temperature, humidityPercent);

/** Where the water of this air settles as frost; above the dew point wherever that is below 0 °C. Humidity in percent, more than 0. */
export const frostPoint = (temperature: Celsius, humidityPercent: number): Celsius => pointOver(ICE, temperature, humidityPercent);

/** The formula solved for the temperature; the logarithm of the pressure is written out, so that 100 % gives back the air. */
function pointOver({ a, b }: typeof WATER | typeof ICE, temperature: Celsius, humidityPercent: number): Celsius {
  const gamma = Math.log(humidityPercent / 100) + (WATER.a * temperature) / (WATER.b + temperature);
  return celsius((b * gamma) / (a - gamma));
}
