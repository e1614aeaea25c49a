import { describe, expect, it } from 'vitest';
import { frontMinutes, vapourShare } from '../../../src/cure/moisture-front.js';
import { celsius, minutes } from '../../../src/cure/units.js';

/** Our own figures. */
const PRINTED = { depthMillimetres: 3, minutes: minutes(1440) };
const AIR = { temperature: celsius(23), humidity: 50 };

describe('a front of moisture', () => {
  it('is as deep as printed after the printed minutes, and twice as deep after four times as long', () => {
    expect([3, 6, 1.5, 0].map((depth) => frontMinutes(PRINTED, depth))).toEqual([1440, 5760, 360, 0]);
  });

  it('takes twice as long with half the vapour, and has no end in dry air', () => {
    expect(vapourShare({ ...AIR, humidity: 25 }, AIR)).toBe(0.5);
    expect(frontMinutes(PRINTED, 3, 0.5)).toBe(2880);
    expect(frontMinutes(PRINTED, 3, vapourShare({ ...AIR, humidity: 0 }, AIR))).toBe(Infinity);
  });

  it('is slower in colder air of the same humidity', () => {
    expect(vapourShare({ ...AIR, temperature: celsius(10) }, AIR)).toBeLessThan(0.5);
  });
});
