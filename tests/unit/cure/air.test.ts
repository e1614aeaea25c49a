import { describe, expect, it } from 'vitest';
import { airSteps, type AirInput, type AirReading, type AirSide, type OpenPeriod } from '../../../src/cure/air.js';
import { vapourPressure } from '../../../src/cure/dew-point.js';
import { celsius } from '../../../src/cure/units.js';
import { on, words } from '../../support/joint.js';

const open = (...days: string[]): OpenPeriod[] => days.map((day) => ({ opens: on(`${day} 07:30`), closes: on(`${day} 17:00`), longClosureAfter: day === 'Fri' }));
const reading = (at: string, value: number, humidity: number | null = null): AirReading => ({ at: on(at), value: celsius(value), humidity });

interface Given {
  readonly usual?: number | null;
  readonly night?: number | null;
  readonly periods?: readonly OpenPeriod[];
}

function input(start: string, readings: readonly AirReading[], { usual = 20, night = 12, periods = open('Mon', 'Tue') }: Given): AirInput {
  return { start: on(start), readings, periods, usual: usual === null ? null : celsius(usual), night: night === null ? null : celsius(night), closedDays: null };
}

const air = (start: string, readings: readonly AirReading[], given: Given = {}, side: AirSide = 'cold'): string[] => words(airSteps(input(start, readings, given), side));

describe('the air that counts for strength', () => {
  it.each<[string, string, readonly AirReading[], Given, readonly string[]]>([
    ['is the usual air for a joint begun today, and the night setting from the first minute after closing', '15:00', [], {}, ['15:00 20 usual air', '17:00 12 night setting']],
    ['is the night setting until the first reading after opening', '15:00', [reading('Tue 07:50', 20)], {}, ['15:00 20 usual air', '17:00 12 night setting', 'Tue 07:50 20 air reading', 'Tue 10:50 20 old air reading', 'Tue 17:00 12 night setting']],
    ['is a reading for three hours, then the colder of the last two', '08:00', [reading('08:00', 18), reading('09:00', 21)], {}, ['08:00 18 air reading', '09:00 21 air reading', '12:00 18 old air reading', '17:00 12 night setting']],
    ['is a single old reading itself', '08:00', [reading('08:00', 18)], {}, ['08:00 18 air reading', '11:00 18 old air reading', '17:00 12 night setting']],
    ['takes a reading within 15 minutes for a correction', '08:00', [reading('08:00', 12), reading('08:05', 21)], {}, ['08:00 12 air reading', '08:05 21 air reading', '11:05 21 old air reading', '17:00 12 night setting']],
    ['is known before the joint was begun', '09:00', [reading('08:30', 18)], {}, ['09:00 18 air reading', '11:30 18 old air reading', '17:00 12 night setting']],
    ['counts for the day when read in the hour before opening', '15:00', [reading('Tue 06:30', 19)], {}, ['15:00 20 usual air', '17:00 12 night setting', 'Tue 06:30 19 air reading', 'Tue 09:30 19 old air reading', 'Tue 17:00 12 night setting']],
    ['is night still when read earlier than that', '15:00', [reading('Tue 06:29', 19)], {}, ['15:00 20 usual air', '17:00 12 night setting']],
    ['is the colder of night setting and a reading at night', '15:00', [reading('19:00', 9)], {}, ['15:00 20 usual air', '17:00 12 night setting', '19:00 9 night setting']],
    ['takes the usual air no warmer than yesterday was read', 'Tue 09:00', [reading('16:00', 17)], {}, ['Tue 09:00 17 usual air', 'Tue 17:00 12 night setting']],
    ['sleeps over a weekend', 'Fri 16:00', [], { periods: open('Fri') }, ['Fri 16:00 20 usual air', 'Fri 17:00 12 night setting']],
    ['is night on a closed day, whatever was read', 'Fri 16:00', [reading('Sat 11:00', 21)], { periods: open('Fri') }, ['Fri 16:00 20 usual air', 'Fri 17:00 12 night setting']],
    ['is unknown at night without a night setting', '15:00', [reading('19:00', 20)], { night: null }, ['15:00 20 usual air', '17:00 nothing unknown air']],
    ['is unknown in the day without usual air, until somebody reads', '09:00', [reading('10:00', 19)], { usual: null }, ['09:00 nothing unknown air', '10:00 19 air reading', '13:00 19 old air reading', '17:00 12 night setting']],
    ['never takes the usual air for a joint that began before this day', '18:00', [], {}, ['18:00 12 night setting']],
    ['begins at night and becomes usual air at opening for an early bird', '06:45', [], {}, ['06:45 12 night setting', '07:30 20 usual air', '17:00 12 night setting']],
  ])('%s', (_name, start, readings, given, expected) => {
    expect(air(start, readings, given)).toEqual(expected);
  });
});

describe('the air that counts for open time, which errs early', () => {
  it.each<[string, string, readonly AirReading[], Given, readonly string[]]>([
    ['is the hotter of the last two readings', '12:05', [reading('08:00', 27), reading('09:00', 20)], {}, ['12:05 27 old air reading', '17:00 20 night setting']],
    ['is the hotter of usual and yesterday', 'Tue 09:00', [reading('16:00', 24)], {}, ['Tue 09:00 24 usual air', 'Tue 17:00 20 night setting']],
    ['is the air of the day after closing', '17:10', [reading('16:00', 24)], {}, ['17:10 24 night setting']],
    ['is unknown where nothing is known', '17:10', [], { usual: null, night: null }, ['17:10 nothing unknown air']],
  ])('%s', (_name, start, readings, given, expected) => {
    expect(air(start, readings, given, 'hot').slice(0, expected.length)).toEqual(expected);
  });
});

describe('humidity', () => {
  const humidity = (start: string, ...readings: AirReading[]) => airSteps(input(start, readings, {})).map((step) => step.humidity);
  it.each([
    ['of a reading, the drier of the last two after three hours, also at night', [reading('08:00', 20, 50), reading('09:00', 20, 60)], [50, 60, 50, 50]],
    ['of a single reading goes on until the next', [reading('08:00', 20, 50)], [50, 50, 50]],
    ['is unknown when the last reading has none', [reading('08:00', 20, 50), reading('09:00', 20)], [50, null, null, null]],
  ])('%s', (_name, readings, expected) => {
    expect(humidity('08:00', ...readings)).toEqual(expected);
  });

  it('is water that stays in the shop while it cools, as far as colder air can hold it', () => {
    const vapours = airSteps(input('08:00', [reading('08:00', 20, 50)], {})).map((step) => step.vapour);
    expect(vapours).toEqual([vapourPressure(celsius(20), 50), vapourPressure(celsius(20), 50), vapourPressure(celsius(20), 50)]);
    const damp = airSteps(input('08:00', [reading('08:00', 20, 90)], {})).map((step) => step.vapour);
    expect(damp.at(-1)).toBe(vapourPressure(celsius(12), 100));
  });
});
