import { describe, expect, it } from 'vitest';
import type { AirStep } from '../../../src/cure/air.js';
import { dewPoint, vapourPressure } from '../../../src/cure/dew-point.js';
import { forecast, milestoneCounts, milestoneShare } from '../../../src/cure/forecast.js';
import type { HeatEvent, JointHistory } from '../../../src/cure/history.js';
import { celsius, minutes, plus } from '../../../src/cure/units.js';
import { cardNamed } from '../../support/card-shelf.js';
import { closing, dueTimes, joint, lampOff, on, read, steadyAir } from '../../support/joint.js';

const step = (from: string, temperature: number | null, humidity: number | null = null): AirStep => ({ from: on(from), temperature: temperature === null ? null : celsius(temperature), humidity, source: 'air reading' });
const due = (card: string, history: JointHistory) => dueTimes(cardNamed(card), history);

describe('credit by panel temperature, P1', () => {
  it.each<[string, readonly HeatEvent[], readonly AirStep[], string]>([
    ['reading 30 from the start, lamp off after half of the wait', [read('08:00', 30), lampOff('09:15')], [step('08:00', 20)], '11:45'],
    ['reading 30 from the start', [read('08:00', 30)], [step('08:00', 20)], '10:30'],
    ['air 20', [], [step('08:00', 20)], '13:00'],
    ['air 27, rounded up to the minute', [], [step('08:00', 27)], '11:05'],
    ['air 14 counts nothing', [], [step('08:00', 14)], 'never'],
    ['unknown air counts nothing', [], [step('08:00', null)], 'never'],
    ['asleep until a reading at 10:00', [read('10:00', 30)], [step('08:00', 14)], '12:30'],
    ['night in between is 0 %: 120 of 300 min on Monday, 180 on Tuesday', [], [step('08:00', 20), step('10:00', 12), step('Tue 07:30', 20)], 'Tue 10:30'],
    ['a wait that ends with its last minute of day air', [], [step('08:00', 20), step('13:00', 12)], '13:00'],
  ])('%s', (_name, heat, air, expected) => {
    expect(due('P1', joint('08:00', heat, air)).handling).toBe(expected);
  });

  it('sums a wait out of many pieces to the very end of the last one', () => {
    // Ten tenths of the wait; nine times 0.1 is a little less than 0.9 for a computer, and night begins with the last.
    const air = Array.from({ length: 10 }, (_, half): AirStep => ({ ...step('08:00', 20), from: plus(on('08:00'), minutes(30 * half)), source: half % 2 === 0 ? 'air reading' : 'old air reading' }));
    expect(due('P1', joint('08:00', [], [...air, step('13:00', 12)])).handling).toBe('13:00');
  });

  it('is asleep or awake, and its share never falls', () => {
    const handling = forecast(cardNamed('P1'), joint('08:00', [], [step('08:00', 20), step('10:00', 12)])).find((one) => one.kind === 'handling');
    if (handling === undefined) throw new Error('no handling');
    expect([milestoneCounts(handling, on('09:00')), milestoneCounts(handling, on('10:00')), milestoneCounts(handling, on('07:00'))]).toEqual([true, false, false]);
    expect([milestoneShare(handling, on('07:00')), milestoneShare(handling, on('09:00')), milestoneShare(handling, on('12:00'))]).toEqual([0, 0.2, 0.4]);
  });
});

describe('the drive-away table of G1, looked up and never interpolated', () => {
  it.each<[string, readonly AirStep[], string]>([
    ['14 °C and 60 %', [step('10:00', 14, 60)], '14:00'],
    ['21 °C and 38 %', [step('10:00', 21, 38)], '14:00'],
    ['21 °C and 50 %', [step('10:00', 21, 50)], '11:30'],
    ['20 °C and 45 %, the very limits', [step('10:00', 20, 45)], '11:30'],
    ['unknown humidity is the worst row', [step('10:00', 21)], '18:00'],
    ['3 °C has no time', [step('10:00', 3, 80)], 'never'],
    ['unknown air has no time', [step('10:00', null, 80)], 'never'],
    ['no air at all has no time', [], 'never'],
    ['colder before it is reached: the worse row', [step('10:00', 21, 50), step('11:00', 14, 50)], '14:00'],
    ['colder only afterwards', [step('10:00', 21, 50), step('11:30', 3, 50)], '11:30'],
    ['colder before the glass was set', [step('09:00', 3, 20), step('09:50', 21, 50)], '11:30'],
    ['too cold on the way has no time', [step('10:00', 14, 50), step('13:00', 3, 50)], 'never'],
  ])('%s', (_name, air, expected) => {
    expect(due('G1', joint('10:00', [], air))['drive-away']).toBe(expected);
  });
});

describe('the depth of S1, by moisture from the air', () => {
  it.each<[string, readonly AirStep[], string]>([
    ['the reference air', [step('08:00', 20, 50)], 'Tue 08:00'],
    ['damper and warmer air gives no bonus', [step('08:00', 30, 80)], 'Tue 08:00'],
    // Half the humidity is half the vapour, so twice the time.
    ['half as damp takes twice as long', [step('08:00', 20, 25)], 'Wed 08:00'],
    ['unknown humidity counts nothing', [step('08:00', 20)], 'never'],
    ['air that is bone dry counts nothing', [step('08:00', 20, 0)], 'never'],
    ['damp air before the joint was closed counts nothing', [step('06:00', 20), step('07:00', 20, 50)], 'Tue 08:00'],
    ['a lamp gives nothing', [step('08:00', 20, 50)], 'Tue 08:00'],
  ])('%s', (_name, air, expected) => {
    expect(due('S1', joint('08:00', [read('08:00', 40)], air)).through).toBe(expected);
  });

  it('has its skin by the clock', () => {
    expect(due('S1', joint('08:00', [], [step('08:00', 5)])).skin).toBe('08:25');
  });
});

describe('time at a temperature', () => {
  it.each<[string, readonly HeatEvent[], string]>([
    ['metal never read has no end', [], 'never'],
    ['35 min from the reading', [read('11:14', 60)], '11:49'],
    ['a dip is left out', [read('11:14', 60), read('11:30', 52), read('11:36', 60)], '11:55'],
    ['too cold counts nothing', [read('11:14', 59.9)], 'never'],
    ['over the maximum of 70 counts nothing', [read('11:14', 71)], 'never'],
    ['what was not read after closing counts nothing', [read('11:14', 60), closing('11:30')], 'never'],
  ])('C1 in the oven: %s', (_name, heat, expected) => {
    expect(due('C1', joint('11:00', heat, steadyAir(on('11:00'), 65))).dwell).toBe(expected);
  });

  it.each<[string, readonly AirStep[], string]>([
    ['all day at 20', [step('09:00', 20)], '12:00'],
    ['only while warm enough', [step('09:00', 15), step('10:00', 14.9), step('11:00', 15)], '13:00'],
  ])('W1 above 15 °C: %s', (_name, air, expected) => {
    expect(due('W1', joint('09:00', [], air))['drip-free']).toBe(expected);
  });

  it('E1 may be painted over from 30 min on', () => {
    expect(due('E1', joint('09:30'))).toEqual({ 'recoat-from': '10:00' });
  });
});

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
  ])('at %d °C and %d %% is %d °C', (temperature, humidity, expected) => {
    expect(dewPoint(celsius(temperature), humidity)).toBeCloseTo(expected, 3);
  });

  // Printed for 20 °C in the coatings industry's information sheet no. 1650 (June 2013), to a tenth of a degree.
  it.each([
    [50, 9.3],
    [55, 10.7],
    [60, 12.0],
  ])('at 20 °C and %d %% is printed as %d', (humidity, printed) => {
    expect(dewPoint(celsius(20), humidity)).toBeCloseTo(printed, 1);
  });

  it('is the air temperature when the air is full of water', () => {
    expect(dewPoint(celsius(17), 100)).toBeCloseTo(17, 9);
    expect(vapourPressure(celsius(0), 100)).toBe(6.112);
  });
});
