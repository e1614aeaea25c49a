import { describe, expect, it } from 'vitest';
import { airSteps, type AirReading, type AirSide, type OpenPeriod } from '../../../src/cure/air.js';
import { celsius } from '../../../src/cure/units.js';
import { on, words } from '../../support/joint.js';

/** Working days of one week; a star says that a whole closed day or more comes after. */
function week(...days: string[]): OpenPeriod[] {
  return days.map((text) => {
    const day = text.replace('*', '');
    return { opens: on(`${day} 07:30`), closes: on(`${day} 17:00`), longClosureAfter: text.endsWith('*') };
  });
}

const reading = (at: string, value: number): AirReading => ({ at: on(at), value: celsius(value), humidity: null });
const HOLIDAY_ON_WEDNESDAY = week('Mon', 'Tue*', 'Thu', 'Fri*');

interface Given {
  readonly periods?: readonly OpenPeriod[];
  readonly night?: number | null;
  readonly closedDays?: number | null;
}

function air(start: string, readings: readonly AirReading[], { periods = HOLIDAY_ON_WEDNESDAY, night = 12, closedDays = 8 }: Given, side: AirSide = 'cold'): string[] {
  const known = (value: number | null) => (value === null ? null : celsius(value));
  return words(airSteps({ start: on(start), periods, readings, usual: celsius(20), night: known(night), closedDays: known(closedDays) }, side));
}

describe('when the shop stays closed for a whole day or longer', () => {
  it.each<[string, string, readonly AirReading[], Given, readonly string[]]>([
    ['a normal night keeps the night setting, a closed day has its own from the first minute after closing', 'Mon 15:00', [], {}, ['15:00 20 usual air', '17:00 12 night setting', 'Tue 17:00 8 closed days']],
    ['its setting counts until the first reading after opening', 'Tue 15:00', [reading('Thu 07:50', 19)], {}, ['Tue 15:00 20 usual air', 'Tue 17:00 8 closed days', 'Thu 07:50 19 air reading', 'Thu 10:50 19 old air reading', 'Thu 17:00 12 night setting', 'Fri 17:00 8 closed days']],
    ['a reading in the hour before opening ends it', 'Tue 15:00', [reading('Thu 06:40', 17)], { periods: week('Tue*', 'Thu') }, ['Tue 15:00 20 usual air', 'Tue 17:00 8 closed days', 'Thu 06:40 17 air reading', 'Thu 09:40 17 old air reading', 'Thu 17:00 12 night setting']],
    ['a working day on which nobody reads does not end it', 'Tue 15:00', [reading('Fri 08:00', 18)], {}, ['Tue 15:00 20 usual air', 'Tue 17:00 8 closed days', 'Fri 08:00 18 air reading', 'Fri 11:00 18 old air reading', 'Fri 17:00 8 closed days']],
    ['a joint begun on the day after has nothing of it', 'Thu 09:00', [], { periods: week('Tue*', 'Thu', 'Fri*') }, ['Thu 09:00 20 usual air', 'Thu 17:00 12 night setting', 'Fri 17:00 8 closed days']],
    ['nor has one that an early bird begins, once the shop opens', 'Thu 06:45', [], { periods: week('Tue*', 'Thu', 'Fri*') }, ['Thu 06:45 8 closed days', 'Thu 07:30 20 usual air', 'Thu 17:00 12 night setting', 'Fri 17:00 8 closed days']],
    ['a joint begun on the closed day itself has it at once', 'Wed 11:00', [reading('Wed 11:05', 15)], { periods: week('Tue*', 'Thu') }, ['Wed 11:00 8 closed days']],
    ['a colder reading on the closed day overrules it', 'Tue 16:00', [reading('Wed 11:00', 5), reading('Wed 12:00', 10)], { periods: week('Tue*') }, ['Tue 16:00 20 usual air', 'Tue 17:00 8 closed days', 'Wed 11:00 5 closed days', 'Wed 12:00 8 closed days']],
    ['a closure from before the first known day may be one', 'Mon 05:00', [], { periods: week('Mon') }, ['05:00 8 closed days', '17:00 12 night setting']],
    ['without a setting of its own it is as any night', 'Tue 15:00', [], { closedDays: null }, ['Tue 15:00 20 usual air', 'Tue 17:00 12 night setting']],
    ['a setting that is no colder than the night changes nothing', 'Tue 15:00', [], { closedDays: 14 }, ['Tue 15:00 20 usual air', 'Tue 17:00 12 night setting']],
    ['nothing counts while the night is unknown', 'Tue 15:00', [], { night: null }, ['Tue 15:00 20 usual air', 'Tue 17:00 nothing unknown air']],
  ])('%s', (_name, start, readings, given, expected) => {
    expect(air(start, readings, given)).toEqual(expected);
  });

  it('open time, which must err early, knows no colder air by it', () => {
    const readings = [reading('Tue 16:00', 24)];
    expect(air('Tue 15:00', readings, {}, 'hot')).toEqual(air('Tue 15:00', readings, { closedDays: null }, 'hot'));
    expect(air('Tue 17:30', readings, {}, 'hot')[0]).toBe('Tue 17:30 24 night setting');
  });
});
