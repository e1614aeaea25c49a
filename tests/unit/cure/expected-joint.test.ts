import { describe, expect, it } from 'vitest';
import { expectedProgress, expectedShareAt, expectedTemperatureAt } from '../../../src/cure/expected.js';
import { heatedSpans } from '../../../src/cure/heated-spans.js';
import type { HeatEvent, JointHistory } from '../../../src/cure/history.js';
import { jointSteps } from '../../../src/cure/joint-temperature.js';
import { minutesAt } from '../../../src/cure/rows.js';
import { celsius, instant, minutesBetween } from '../../../src/cure/units.js';
import { closing, foundOff, joint, lampOff, lampOn, lampSet, on, padSet, read, rows, said, steadyAir } from '../../support/joint.js';

const SHEET = rows({ 15: 450, 20: 300, 30: 150, 40: 75, 65: 25 });

const expected = (history: JointHistory) => expectedProgress(SHEET, history, 'thin-skin');
const temperaturesOf = (history: JointHistory, times: readonly string[]): (number | null)[] => {
  const progress = expected(history);
  return times.map((time) => expectedTemperatureAt(progress, on(time))).map((value) => (value === null ? null : Math.round(value * 1000) / 1000));
};
/** First-order warm-up, written out. */
const warm = (from: number, towards: number, minute: number, constant = 8): number => Math.round((towards - (towards - from) * Math.exp(-minute / constant)) * 1000) / 1000;

describe('the expected wait without heat', () => {
  it('is that of the air, as on the safe side', () => {
    const progress = expected(joint('08:00'));
    expect(said(progress.due)).toBe('13:00');
    expect(expectedShareAt(progress, on('10:30'))).toBeCloseTo(0.5, 12);
    expect(expectedShareAt(progress, on('07:00'))).toBe(0);
    expect(expectedShareAt(progress, on('19:00'))).toBe(1);
  });

  it('follows the steps of the air, sleeps in the cold and in unknown air', () => {
    const air = [...steadyAir(on('08:00'), 20), ...steadyAir(on('09:00'), 10), ...steadyAir(on('11:00'), null), ...steadyAir(on('12:00'), 20)];
    const progress = expected(joint('08:00', [], air));
    expect(said(progress.due)).toBe('16:00');
    for (const time of ['09:00', '11:00', '12:00']) expect(expectedShareAt(progress, on(time))).toBeCloseTo(0.2, 12);
    expect(expectedTemperatureAt(progress, on('11:30'))).toBeNull();
  });

  it('never ends below the coldest row', () => {
    expect(expected(joint('08:00', [], steadyAir(on('08:00'), 14.9))).due).toBeNull();
  });
});

describe('the expected temperature under a lamp', () => {
  it('warms up from the air to the setting', () => {
    expect(temperaturesOf(joint('08:00', [lampSet('08:30', 60)]), ['08:10', '08:30', '08:38', '09:30', '15:00'])).toEqual([20, 20, warm(20, 60, 8), warm(20, 60, 60), 60]);
  });

  it('warms up more slowly where there is more metal', () => {
    const history = joint('08:00', [lampSet('08:00', 60)]);
    const thick = expectedProgress(SHEET, history, 'two-sheets-with-flange');
    expect(expectedTemperatureAt(thick, on('08:20'))).toBeCloseTo(warm(20, 60, 20, 20), 3);
    expect(thick.due ?? 0).toBeGreaterThan(expected(history).due ?? Infinity);
  });

  it('passes through the next reading and is straight between readings', () => {
    const heat = [lampSet('08:00', 60), read('08:20', 45), read('09:00', 55)];
    const [early = 0, ...others] = temperaturesOf(joint('08:00', heat), ['08:10', '08:20', '08:40', '09:00']);
    expect(others).toEqual([45, 50, 55]);
    // Warm-ups bend: after half the time more than half of the way is done.
    expect(early).toBeGreaterThan(33);
    expect(early).toBeLessThan(45);
  });

  it('goes on along the curve through a single early reading, never above the setting', () => {
    const through = 20 + 10 / (1 - Math.exp(-5 / 8));
    expect(temperaturesOf(joint('08:00', [lampSet('08:00', 60), read('08:05', 30)]), ['08:05', '12:00'])).toEqual([30, Math.round(through * 1000) / 1000]);
    expect(temperaturesOf(joint('08:00', [lampSet('08:00', 40), read('08:05', 38)]), ['12:00'])).toEqual([40]);
  });

  it('learns the time constant from two readings', () => {
    const at = (minute: number): number => 60 - 40 * Math.exp(-minute / 15);
    const heat = [lampSet('08:00', 60), read('08:10', at(10)), read('08:25', at(25))];
    expect(temperaturesOf(joint('08:00', heat), ['08:40', '09:00'])).toEqual([warm(20, 60, 40, 15), warm(20, 60, 60, 15)]);
  });

  it.each([
    ['that hold', 55, 55],
    ['that fall', 55, 52],
    ['above the setting', 58, 62],
  ])('stays at the last of two readings %s', (_name, first, last) => {
    expect(temperaturesOf(joint('08:00', [lampSet('08:00', 60), read('09:00', first), read('09:30', last)]), ['09:30', '14:00'])).toEqual([last, last]);
  });

  it('begins with what is read at the very switch-on', () => {
    for (const heat of [[lampSet('08:00', 60), read('08:00', 35)], [read('08:00', 35), lampSet('08:00', 60)]]) {
      expect(temperaturesOf(joint('08:00', heat), ['08:08'])).toEqual([warm(35, 60, 8)]);
    }
  });

  it('goes on from where it was when the lamp is set higher, and drops at once when it is set lower', () => {
    const stages = [lampSet('08:00', 30), read('09:00', 29)];
    expect(temperaturesOf(joint('08:00', [...stages, lampSet('09:00', 60)]), ['09:08'])).toEqual([warm(29, 60, 8)]);
    expect(temperaturesOf(joint('08:00', [lampSet('08:00', 60), read('09:00', 58), lampSet('09:00', 35)]), ['09:00', '10:00'])).toEqual([35, 35]);
  });

  it('counts air from the switch-off on, however warm the metal is', () => {
    expect(temperaturesOf(joint('08:00', [lampSet('08:00', 60), read('09:00', 58), lampOff('09:30'), read('09:35', 50)]), ['09:00', '09:30', '09:36'])).toEqual([58, 20, 20]);
  });

  it('comes back to what was read at this setting when the lamp is on again', () => {
    const heat = [lampSet('08:00', 60), read('09:00', 52), lampOff('10:00'), lampOn('11:00')];
    expect(temperaturesOf(joint('08:00', heat), ['10:30', '11:08', '16:00'])).toEqual([20, warm(20, 52, 8), 52]);
  });

  it('was off since the last sign of life when it is found off', () => {
    const heat = [lampSet('08:00', 60), read('09:00', 58), foundOff('11:00')];
    expect(temperaturesOf(joint('08:00', heat), ['08:59', '09:01', '12:00'])).toEqual([warm(20, 20 + 38 / (1 - Math.exp(-60 / 8)), 59), 20, 20]);
  });

  it('ends at closing time', () => {
    expect(temperaturesOf(joint('08:00', [lampSet('16:00', 60), read('16:50', 59), closing('17:00')]), ['16:50', '17:00'])).toEqual([59, 20]);
  });

  it('holds a reading without a lamp from the moment it was taken', () => {
    expect(temperaturesOf(joint('08:00', [read('09:00', 31)]), ['08:59', '09:00', '15:00'])).toEqual([20, 31, 31]);
  });

  it('is unknown from a switch-on in unknown air to the first reading', () => {
    const history = joint('08:00', [lampSet('08:00', 60), read('08:30', 50)], steadyAir(on('08:00'), null));
    expect(temperaturesOf(history, ['08:20', '08:30'])).toEqual([null, 50]);
  });

  it('goes on through the start where the panel was warm before', () => {
    const heat = [lampSet('08:00', 60), read('08:30', 40), read('09:30', 60)];
    const moved = expected({ ...joint('09:00', heat), air: steadyAir(on('07:00'), 20) });
    expect(moved.stretches[0]?.from).toBe(on('09:00'));
    expect(expectedTemperatureAt(moved, on('09:00'))).toBeCloseTo(50, 9);
    expect(expectedShareAt(moved, on('09:00'))).toBe(0);
    const warming = expected({ ...joint('08:08', [lampSet('08:00', 60)]), air: steadyAir(on('07:00'), 20) });
    expect(expectedTemperatureAt(warming, on('08:16'))).toBeCloseTo(warm(20, 60, 16), 3);
  });
});

describe('a time constant learnt from two readings of a warm-up', () => {
  const at = (minute: number, constant: number): number => 60 - 40 * Math.exp(-minute / constant);
  const readings = (constant: number) => [lampSet('08:00', 60), read('08:10', at(10, constant)), read('08:25', at(25, constant))];
  const plateau = at(25, 15);

  it('holds for the next warm-up, after an interruption and when it is turned up', () => {
    expect(temperaturesOf(joint('08:00', [...readings(15), lampOff('09:00'), lampOn('10:00')]), ['10:15', '10:30'])).toEqual([warm(20, plateau, 15, 15), warm(20, plateau, 30, 15)]);
    const stages = [lampSet('08:00', 30), read('08:10', 25), read('08:15', 30 - 5 * Math.exp(-5 / 15)), lampOff('08:20'), lampSet('09:00', 60)];
    expect(temperaturesOf(joint('08:00', stages), ['09:15'])).toEqual([warm(20, 60, 15, 15)]);
  });

  it('is taken from the two readings between which the joint warmed most', () => {
    const more = [...readings(15), read('08:40', 52), read('09:00', 52.1)];
    expect(temperaturesOf(joint('08:00', [...more, lampOff('09:30'), lampOn('10:00')]), ['10:15'])).toEqual([warm(20, 52.1, 15, 15)]);
  });

  it.each([
    ['of metal that stood already', [lampSet('08:00', 60), read('08:30', 52), read('09:30', 52.2)], 52.2],
    ['of a jump that no metal does', [lampSet('08:00', 60), read('08:10', 22), read('08:11', 59)], 59],
    ['of one reading alone', [lampSet('08:00', 60), read('08:10', 45)], 45],
    ['of heat without a setting', [read('08:10', 30), read('08:25', 40)], 40],
  ])('is none %s', (_name, heat, back) => {
    expect(temperaturesOf(joint('08:00', [...heat, lampOff('09:40'), lampOn('10:00')]), ['10:08'])[0] ?? 0).toBeCloseTo(heat[0]?.kind === 'reading' ? 20 : warm(20, back, 8), 3);
  });
});

describe('the highest panel temperature of a card', () => {
  const limited = (history: JointHistory, maximum: number) => expectedProgress(SHEET, history, 'thin-skin', celsius(maximum));

  it('ends the wait of a joint that is expected to pass it', () => {
    const history = joint('08:00', [lampSet('08:00', 60)]);
    expect(limited(history, 60).due).toBe(expected(history).due);
    const stopped = limited(history, 50);
    expect(stopped.due).toBeNull();
    // From 20 towards 60 °C with 8 min: 50 °C is passed after 8 ln 4 = 11.1 min, and from there nothing is earned.
    expect(expectedShareAt(stopped, on('08:12'))).toBe(expectedShareAt(stopped, on('15:00')));
    expect(expectedShareAt(stopped, on('08:11'))).toBeCloseTo(expectedShareAt(expected(history), on('08:11')), 12);
  });

  it('counts of two readings around it only the time below it', () => {
    const history = joint('08:00', [lampSet('08:00', 60), read('08:00', 60), read('08:40', 80), read('09:20', 60)]);
    const stopped = limited(history, 70);
    expect(expectedShareAt(stopped, on('08:20'))).toBeCloseTo(expectedShareAt(stopped, on('09:00')), 12);
    expect(expectedShareAt(stopped, on('09:10'))).toBeGreaterThan(expectedShareAt(stopped, on('09:00')));
  });
});

describe('the expected due time', () => {
  it('is where the share becomes full, in every kind of stretch', () => {
    const histories: readonly (readonly HeatEvent[])[] = [
      [lampSet('08:00', 60)],
      [lampSet('08:00', 60), read('08:10', 22), read('12:00', 40)],
      [lampSet('08:00', 60), read('08:10', 45), lampOff('08:15')],
      [read('08:00', 19), lampSet('09:00', 35), read('13:00', 33)],
    ];
    for (const heat of histories) {
      const progress = expected(joint('08:00', heat));
      const due = progress.due ?? instant(NaN);
      expect(expectedShareAt(progress, due)).toBeCloseTo(1, 9);
      expect(expectedShareAt(progress, instant(due - 60_000))).toBeLessThan(1);
    }
  });

  it('comes before that of the safe side for a lamp that was read once', () => {
    const history = joint('08:00', [lampSet('08:00', 60), read('08:20', 45)]);
    const steps = jointSteps(history, null);
    const safe = steps.reduce((sum, step, index) => {
      const to = steps[index + 1]?.from ?? on('09:00');
      const wait = step.temperature === null ? null : minutesAt(SHEET, step.temperature);
      return wait === null ? sum : sum + minutesBetween(step.from, to) / wait;
    }, 0);
    expect(expectedShareAt(expected(history), on('09:00'))).toBeGreaterThan(safe);
  });
});

describe('heated spans', () => {
  it('are cut by a lamp found off, also across closing time', () => {
    const heat = [lampSet('08:00', 60), read('09:00', 58), closing('17:00'), foundOff('Tue 07:30'), read('Tue 08:00', 57)];
    expect(heatedSpans(heat).map((span) => [said(span.from), said(span.to), span.fromSwitchOn])).toEqual([
      ['08:00', '09:00', true],
      ['Tue 08:00', 'never', false],
    ]);
  });

  it('are cut where a pad takes the place of a lamp, and nothing that was read under the lamp is known of the pad', () => {
    const [lamp, pad] = heatedSpans([lampSet('08:00', 60), read('09:00', 52), padSet('10:00', 60)]);
    expect([said(lamp?.to ?? null), pad?.towards, pad?.keepsReading]).toEqual(['10:00', 60, false]);
  });

  it('are not cut by a lamp that is seen on, or set again to what it is', () => {
    const heat = [lampSet('08:00', 60), lampOn('09:00'), lampSet('10:00', 60)];
    expect(heatedSpans(heat)).toHaveLength(1);
  });
});
