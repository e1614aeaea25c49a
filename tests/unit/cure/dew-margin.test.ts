import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dewMargin, LEAST_DEW_MARGIN } from '../../../src/cure/dew-margin.js';
import { dewPoint, frostPoint } from '../../../src/cure/dew-point.js';
import { celsius } from '../../../src/cure/units.js';

const AIR = celsius(20);
/** Of air of 20 °C and 60 %: 11.995 °C. */
const POINT = dewPoint(AIR, 60);
const above = (kelvin: number) => dewMargin(celsius(POINT + kelvin), AIR, 60);

describe('the margin of metal over the dew point', () => {
  it.each([
    [5, 5, 'enough'],
    [3.1, 3.1, 'enough'],
    [3.09, 3.1, 'enough'],
    [3.04, 3, 'enough'],
    [3, 3, 'enough'],
    // Floating dust of a difference, and no more.
    [3 - 1e-10, 3, 'enough'],
    [3 - 1e-8, 2.9, 'too close'],
    // Too close never reads 3.0.
    [2.99, 2.9, 'too close'],
    [2.9, 2.9, 'too close'],
    [0.04, 0, 'too close'],
    [0, 0, 'too close'],
    [-0.06, -0.1, 'too close'],
    [-4, -4, 'too close'],
  ])('%d K above is %d K and %s', (kelvin, margin, verdict) => {
    expect(above(kelvin)).toEqual({ point: POINT, frost: false, margin, verdict });
  });

  it.each([
    // Air, humidity, metal; the dew points are 12.45, 11.995 and 11.995 °C.
    [18, 70, 15, 2.6, 'too close'],
    [20, 60, 15, 3, 'enough'],
    [20, 60, 14.9, 2.9, 'too close'],
    [20, 100, 20, 0, 'too close'],
  ])('in air of %d °C and %d percent, metal of %d °C has %d K', (air, humidity, metal, margin, verdict) => {
    expect(dewMargin(celsius(metal), celsius(air), humidity)).toMatchObject({ margin, verdict, frost: false });
  });

  it('is taken from the frost point below 0 °C, which is reached sooner', () => {
    // Dew point over water -3.30 °C, frost point -2.915 °C: metal of -0.1 °C would pass on the one and fails on the other.
    const margin = dewMargin(celsius(-0.1), celsius(5), 55);
    expect(margin).toEqual({ point: frostPoint(celsius(5), 55), frost: true, margin: 2.8, verdict: 'too close' });
    expect(-0.1 - dewPoint(celsius(5), 55)).toBeGreaterThan(LEAST_DEW_MARGIN);
  });

  it.each([0, -1, 100.1, NaN, Infinity])('is not known where somebody read %d percent', (humidity) => {
    expect(dewMargin(celsius(15), AIR, humidity)).toBeNull();
  });

  it('is for every air no more than over water, to the nearest tenth, and too close exactly below 3', () => {
    const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((value) => celsius(value / 10));
    fc.assert(
      fc.property(tenths(-20, 60), tenths(-20, 45), fc.integer({ min: 1, max: 100 }), (metal, air, humidity) => {
        const found = dewMargin(metal, air, humidity);
        if (found === null) throw new Error('no margin');
        expect(found.point).toBeGreaterThanOrEqual(dewPoint(air, humidity) - 1e-9);
        expect(Math.abs(found.margin - (metal - found.point))).toBeLessThan(0.1 + 1e-9);
        expect(metal - found.point < LEAST_DEW_MARGIN - 1e-9).toBe(found.verdict === 'too close');
        expect(found.verdict).toBe(found.margin < LEAST_DEW_MARGIN ? 'too close' : 'enough');
        expect(found.frost).toBe(found.point < 0);
      }),
      { numRuns: 2000 },
    );
  });

  it('never grows with damper air', () => {
    fc.assert(
      fc.property(fc.integer({ min: -10, max: 40 }), fc.integer({ min: 1, max: 99 }), (air, humidity) => {
        const [drier, damper] = [humidity, humidity + 1].map((percent) => dewMargin(celsius(10), celsius(air), percent)?.margin ?? NaN);
        expect(damper).toBeLessThanOrEqual(drier ?? NaN);
      }),
    );
  });
});
