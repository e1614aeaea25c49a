import { describe, expect, it } from 'vitest';
import { dewPoint, frostPoint, vapourPressure } from '../../../src/cure/dew-point.js';
import { celsius } from '../../../src/cure/units.js';

describe('dew point over water', () => {
  // Magnus with the coefficients of WMO-No. 8 (17.62 and 243.12 °C, 6.112 hPa), worked out separately.
  it.each([
    [5, 55, -3.304],
    [10, 60, 2.584],
    [15, 85, 12.497],
    [20, 30, 1.882],
    [20, 60, 11.995],
    [25, 80, 21.307],
    [30, 50, 18.441],
    [35, 90, 33.11],
  ])('at %d °C and %d percent is %d °C', (temperature, humidity, expected) => {
    expect(dewPoint(celsius(temperature), humidity)).toBeCloseTo(expected, 3);
  });

  // Printed for 20 °C in the coatings industry's information sheet no. 1650 (June 2013), to a tenth of a degree.
  it.each([
    [50, 9.3],
    [55, 10.7],
    [60, 12.0],
  ])('at 20 °C and %d percent is printed as %d', (humidity, printed) => {
    expect(dewPoint(celsius(20), humidity)).toBeCloseTo(printed, 1);
  });

  it('is the air temperature when the air is full of water', () => {
    expect(dewPoint(celsius(17), 100)).toBeCloseTo(17, 9);
    expect(vapourPressure(celsius(0), 100)).toBe(6.112);
  });
});

describe('frost point', () => {
  // Magnus with the coefficients of WMO-No. 8 over ice (22.46 and 272.62 °C) for the vapour over water, solved separately by halving.
  it.each([
    [5, 30, -9.929],
    [5, 55, -2.915],
    [0, 80, -2.682],
    [-5, 70, -8.544],
  ])('at %d °C and %d percent is %d °C', (temperature, humidity, expected) => {
    expect(frostPoint(celsius(temperature), humidity)).toBeCloseTo(expected, 3);
  });

  it('meets the dew point at 0 °C', () => {
    expect(frostPoint(celsius(0), 100)).toBe(0);
    expect(dewPoint(celsius(0), 100)).toBe(0);
  });
});
