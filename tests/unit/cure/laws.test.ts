import { describe, expect, it } from 'vitest';
import type { AirStep } from '../../../src/cure/air.js';
import type { MaterialCard } from '../../../src/cure/card.js';
import { forecast, milestoneCounts, milestoneShare } from '../../../src/cure/forecast.js';
import type { HeatEvent, JointHistory } from '../../../src/cure/history.js';
import { openLimit } from '../../../src/cure/open-limit.js';
import { minutes, plus } from '../../../src/cure/units.js';
import { cardNamed } from '../../support/card-shelf.js';
import { airStep, closing, dueTimes, joint, lampOff, lampSet, on, read, said, steadyAir } from '../../support/joint.js';

const step = (from: string, temperature: number | null, humidity: number | null = null): AirStep => airStep(on(from), temperature, humidity);
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

describe('a margin on waits by rows', () => {
  const withMargin = (name: string, marginPercent: number): MaterialCard => ({ ...cardNamed(name), marginPercent });

  it.each<[number, readonly HeatEvent[], readonly AirStep[], string]>([
    [0, [], [step('08:00', 20)], '13:00'],
    [25, [], [step('08:00', 20)], '14:15'],
    [100, [], [step('08:00', 20)], '18:00'],
    // 187 of 375 min at 20 °C, then the rest of 187.5 min at 30 °C.
    [25, [], [step('08:00', 20), step('11:07', 30)], '12:41'],
    [25, [], [step('08:00', 14)], 'never'],
    // 2.5 % of 300 min.
    [2.5, [], [step('08:00', 20)], '13:08'],
  ])('of %d percent makes them so much longer', (percent, heat, air, expected) => {
    expect(dueTimes(withMargin('P1', percent), joint('08:00', heat, air)).handling).toBe(expected);
  });

  it('never touches the open time', () => {
    const clock = { pasted: on('08:00'), until: null, air: [step('08:00', 20)], readings: [] };
    expect(openLimit(withMargin('P1', 100), clock)).toEqual(openLimit(cardNamed('P1'), clock));
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
    expect(due('S1', joint('08:00', [read('08:00', 40)], air, 3)).through).toBe(expected);
  });

  it.each([
    [1.5, '14:00'],
    [3, 'Tue 08:00'],
    // 24 h * (4 / 3)² is 42 h 40 min, 24 h * (5 / 3)² is 66 h 40 min.
    [4, 'Wed 02:40'],
    [5, 'Thu 02:40'],
    [6, 'Fri 08:00'],
  ])('%d mm deep, by the square of the depth and no faster under a lamp', (depth, expected) => {
    const air = [step('08:00', 20, 50)];
    expect(due('S1', joint('08:00', [], air, depth)).through).toBe(expected);
    expect(due('S1', joint('08:00', [lampSet('08:00', 60), read('08:20', 60)], air, depth)).through).toBe(expected);
  });

  it('goes on through air that changes: half as damp for the second half of the way', () => {
    expect(due('S1', joint('08:00', [], [step('08:00', 20, 50), step('Tue 05:20', 20, 25)], 4)).through).toBe('Thu 00:00');
  });

  it.each([null, 0, -1])('has no time for a bead of %s mm, never that of the printed depth', (depth) => {
    const [through] = forecast(cardNamed('S1'), joint('08:00', [], [step('08:00', 20, 50)], depth));
    expect(through).toMatchObject({ kind: 'through', dueAt: null });
    expect(through?.progress.pieces).toEqual([{ from: on('08:00'), to: null, temperature: null, source: 'depth not known', wholeMinutes: null }]);
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

  it.each<[string, readonly HeatEvent[], string]>([
    ['warm from the start', [read('11:00', 60)], '11:47'],
    ['warm before it is over', [read('11:05', 60)], '11:47'],
    ['warm when it is over', [read('11:12', 60)], '11:47'],
    ['warm only before it is over', [read('11:02', 60), read('11:10', 40)], 'never'],
    ['a dip before it is over costs nothing', [read('11:00', 60), read('11:04', 40), read('11:08', 60)], '11:47'],
    ['a dip across its end', [read('11:00', 60), read('11:10', 40), read('11:20', 60)], '11:55'],
  ])('C1 counts nothing of the dwell before the flash-off is over: %s', (_name, heat, expected) => {
    expect(due('C1', joint('11:00', heat))).toEqual({ 'flash-off': '11:12', dwell: expected });
  });

  it('C1 says why the first minutes count nothing', () => {
    const dwell = forecast(cardNamed('C1'), joint('11:00', [read('11:05', 60)])).find((one) => one.kind === 'dwell');
    if (dwell === undefined) throw new Error('no dwell');
    expect(dwell.progress.pieces.map(({ from, to, source, wholeMinutes }) => `${said(from)}-${to === null ? '' : said(to)} ${source} ${wholeMinutes ?? 'nothing'}`)).toEqual(['11:00-11:12 flash-off nothing', '11:12- reading 35']);
    expect([milestoneCounts(dwell, on('11:10')), milestoneCounts(dwell, on('11:12')), milestoneShare(dwell, on('11:12'))]).toEqual([false, true, 0]);
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
