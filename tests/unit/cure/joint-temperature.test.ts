import { describe, expect, it } from 'vitest';
import type { HeatEvent } from '../../../src/cure/history.js';
import { jointSteps } from '../../../src/cure/joint-temperature.js';
import { celsius } from '../../../src/cure/units.js';
import { closing, foundOff, joint, lampOff, lampOn, lampSet, on, read, steadyAir, words } from '../../support/joint.js';

const steps = (heat: readonly HeatEvent[], air = 20, maximum: number | null = 85): string[] =>
  words(jointSteps(joint('08:00', heat, steadyAir(on('08:00'), air)), maximum === null ? null : celsius(maximum)));

describe('the joint temperature on the safe side', () => {
  it.each<[string, readonly HeatEvent[], readonly string[]]>([
    ['is the air before the first reading, lamp or not', [lampSet('08:10', 30)], ['08:00 20 air reading']],
    ['is the reading after it', [lampSet('08:10', 30), read('08:30', 30)], ['08:00 20 air reading', '08:30 30 reading']],
    ['needs no lamp to believe a reading', [read('08:30', 30)], ['08:00 20 air reading', '08:30 30 reading']],
    ['is the colder of two over the whole interval', [read('08:00', 30), read('09:00', 26), read('10:00', 34)], ['08:00 26 colder of two readings', '10:00 34 reading']],
    ['is capped back to the start by a reading colder than the air', [read('09:00', 16)], ['08:00 16 air reading', '09:00 16 reading']],
    ['is the air when the lamp is off, stored heat or not', [read('08:00', 30), lampOff('09:00'), read('09:05', 29)], ['08:00 30 reading', '09:00 20 air reading']],
    ['is no warmer than read while the lamp is off', [read('08:00', 30), lampOff('09:00'), read('09:30', 16)], ['08:00 30 reading', '09:00 16 air reading']],
    ['is no warmer than read after the heat that was never a lamp is lost', [read('08:00', 14), lampOff('09:00')], ['08:00 14 reading', '09:00 14 air reading']],
    ['goes back to the last sign of life when the lamp is found off', [read('08:00', 30), lampOn('08:30'), foundOff('09:15')], ['08:00 30 reading', '08:30 20 air reading']],
    ['goes back to the reading when that was the last sign', [lampSet('08:00', 30), read('08:20', 30), foundOff('09:15')], ['08:00 20 air reading']],
    ['believes a reading as warm as before some time after the lamp was found off', [read('08:00', 30), foundOff('09:15'), read('09:30', 28)], ['08:00 20 air reading', '09:30 28 reading']],
    ['takes a joint that is warm minutes after for stored heat', [read('08:00', 30), foundOff('09:15'), read('09:20', 29)], ['08:00 20 air reading']],
    ['believes it at once when the lamp was seen on again', [read('08:00', 30), foundOff('09:15'), lampOn('09:17'), read('09:20', 29)], ['08:00 20 air reading', '09:20 29 reading']],
    ['does not believe a reading that is much colder', [read('08:00', 30), foundOff('09:15'), read('09:30', 27)], ['08:00 20 air reading']],
    ['is the air after the lamp was turned down', [lampSet('08:00', 40), read('08:30', 40), lampSet('09:00', 30)], ['08:00 20 air reading', '08:30 40 reading', '09:00 20 air reading']],
    ['stays the last reading after the lamp was turned up', [lampSet('08:00', 30), read('08:30', 30), lampSet('09:00', 65), read('09:20', 65)], ['08:00 20 air reading', '08:30 30 colder of two readings', '09:20 65 reading']],
    ['is the air from closing time on', [read('08:00', 30), closing('17:00')], ['08:00 30 reading', '17:00 20 air reading']],
    ['keeps the evening when the morning finds it cold', [closing('17:00'), read('Tue 07:40', 16)], ['08:00 20 air reading', '17:00 16 air reading', 'Tue 07:40 16 reading']],
    ['loses the evening when the morning finds the lamp off since nobody knows when', [lampSet('15:00', 30), read('15:30', 30), closing('17:00'), foundOff('Tue 07:35')], ['08:00 20 air reading']],
    ['counts nothing above the maximum', [read('08:00', 65), read('09:00', 88), read('09:10', 60)], ['08:00 65 colder of two readings', '09:00 nothing over the maximum', '09:10 60 reading']],
  ])('%s', (_name, heat, expected) => {
    expect(steps(heat)).toEqual(expected);
  });

  it('counts the very maximum', () => {
    expect(steps([read('08:00', 85)])).toEqual(['08:00 85 reading']);
  });

  it('takes readings from before the start as what stood at the start', () => {
    expect(steps([read('07:30', 30), read('07:50', 28)])).toEqual(['08:00 28 reading']);
  });

  it('counts nothing while neither air nor reading is known', () => {
    const history = joint('08:00', [read('09:00', 30)], steadyAir(on('08:00'), null));
    expect(words(jointSteps(history, null))).toEqual(['08:00 nothing air reading', '09:00 30 reading']);
  });
});
