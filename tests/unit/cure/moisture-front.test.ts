import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frontMinutes, vapourOf, vapourShare } from '../../../src/cure/moisture-front.js';
import { celsius, minutes } from '../../../src/cure/units.js';

/** Our own figures. */
const PRINTED = { depthMillimetres: 3, minutes: minutes(1440) };
const AIR = { temperature: celsius(23), humidity: 50 };

describe('a front of moisture', () => {
  it('is as deep as printed after the printed minutes, and twice as deep after four times as long', () => {
    expect([3, 6, 1.5, 0].map((depth) => frontMinutes(PRINTED, depth))).toEqual([1440, 5760, 360, 0]);
  });

  it('is never sooner where the bead is deeper, and takes as many times longer as the square says', () => {
    const depth = fc.double({ min: 0.1, max: 50, noNaN: true });
    fc.assert(
      fc.property(depth, depth, (one, other) => {
        const [shallow, deep] = [Math.min(one, other), Math.max(one, other)].map((millimetres) => frontMinutes(PRINTED, millimetres));
        expect(deep).toBeGreaterThanOrEqual(shallow ?? NaN);
        expect(Math.sqrt(frontMinutes(PRINTED, one) / frontMinutes(PRINTED, other))).toBeCloseTo(one / other, 6);
      }),
    );
  });

  it('takes twice as long with half the vapour, and has no end in dry air', () => {
    expect(vapourShare(vapourOf({ ...AIR, humidity: 25 }), AIR)).toBe(0.5);
    expect(frontMinutes(PRINTED, 3, 0.5)).toBe(2880);
    expect(frontMinutes(PRINTED, 3, vapourShare(vapourOf({ ...AIR, humidity: 0 }), AIR))).toBe(Infinity);
  });

  it('is slower in colder air of the same humidity', () => {
    expect(vapourShare(vapourOf({ ...AIR, temperature: celsius(10) }), AIR)).toBeLessThan(0.5);
  });
});
