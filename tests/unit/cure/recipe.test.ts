import { describe, expect, it } from 'vitest';
import { forecast } from '../../../src/cure/forecast.js';
import type { HeatEvent } from '../../../src/cure/history.js';
import { lampStretches } from '../../../src/cure/lamp-stretches.js';
import { shareAt } from '../../../src/cure/progress.js';
import { cardNamed } from '../../support/card-shelf.js';
import { closing, dueTimes, foundOff, joint, lampOff, lampOn, lampSet, on, padSet, read, said } from '../../support/joint.js';

const stretches = (...heat: HeatEvent[]): string[] => lampStretches(heat).map(({ from, to, setting }) => `${said(from)}-${to === null ? '' : said(to)} ${setting ?? 'unknown'}`);

describe('the stretches in which a lamp is believed on', () => {
  it.each<[string, readonly HeatEvent[], readonly string[]]>([
    ['end when it is switched off', [lampSet('09:00', 30), lampOff('10:00')], ['09:00-10:00 30']],
    ['change with the setting', [lampSet('09:00', 30), lampSet('10:00', 60)], ['09:00-10:00 30', '10:00- 60']],
    ['are not split by a second look', [lampSet('09:00', 30), lampOn('09:20'), read('09:30', 30), lampSet('09:40', 30)], ['09:00- 30']],
    ['go on after a break with the old setting', [lampSet('09:00', 30), lampOff('09:20'), lampOn('09:35')], ['09:00-09:20 30', '09:35- 30']],
    ['end at the last sign of life when it is found off', [lampSet('09:00', 30), lampOn('09:20'), foundOff('10:00')], ['09:00-09:20 30']],
    ['end at closing time', [lampSet('16:00', 30), closing('17:00')], ['16:00-17:00 30']],
    ['end at the last sign of life when the morning finds it off', [lampSet('15:00', 30), lampOn('16:00'), closing('17:00'), foundOff('Tue 07:40')], ['15:00-16:00 30']],
    ['are kept when it was known to be off before it was found off', [lampSet('09:00', 30), lampOff('10:00'), foundOff('10:30')], ['09:00-10:00 30']],
    ['begin again when somebody sees it on in the morning', [lampSet('16:00', 30), closing('17:00'), lampOn('Tue 07:40')], ['16:00-17:00 30', 'Tue 07:40- 30']],
    ['are none for heat without a lamp', [read('09:00', 30), lampOff('10:00')], []],
  ])('%s', (_name, heat, expected) => {
    expect(stretches(...heat)).toEqual(expected);
  });
});

describe('the lamp recipe P2 (80 min at 35, then 130 min at 55)', () => {
  const p2 = (...heat: HeatEvent[]) => dueTimes(cardNamed('P2'), joint('10:05', heat));
  it.each<[string, readonly HeatEvent[], { readonly handling: string; readonly full: string }]>([
    ['never ends without a lamp', [], { handling: 'never', full: 'never' }],
    ['counts from switch-on', [lampSet('10:10', 35)], { handling: '11:30', full: 'never' }],
    ['counts from closing when the lamp was on before', [lampSet('09:50', 35)], { handling: '11:25', full: 'never' }],
    ['counts nothing below the setting', [lampSet('10:10', 30)], { handling: 'never', full: 'never' }],
    ['takes a hotter lamp for the setting, without a bonus', [lampSet('10:10', 55)], { handling: '11:30', full: '13:40' }],
    ['runs the second stage from turn-up', [lampSet('10:10', 35), lampSet('11:58', 55)], { handling: '11:30', full: '14:08' }],
    ['adds missing minutes and 20 to warm up', [lampSet('10:10', 35), lampSet('11:58', 55), lampOff('12:20'), lampOn('12:35')], { handling: '11:30', full: '14:43' }],
    ['adds them for every break', [lampSet('10:10', 35), lampOff('10:45'), lampOn('10:50'), lampOff('11:10'), lampOn('11:20')], { handling: '12:25', full: 'never' }],
    ['begins again where a break would cost more than the whole stage', [lampSet('10:10', 35), lampOff('10:15'), lampOn('10:20')], { handling: '11:40', full: 'never' }],
    ['begins again at the second of two short breaks', [lampSet('10:10', 35), lampOff('10:30'), lampOn('10:35'), lampOff('10:40'), lampOn('10:50')], { handling: '12:10', full: 'never' }],
    ['counts no earlier minutes against a later switch-on', [lampSet('10:10', 35), lampOff('10:35'), lampOn('11:14'), lampOff('11:40'), lampOn('11:42')], { handling: '12:56', full: 'never' }],
    ['still adds when exactly half of the stage is missing', [lampSet('10:10', 35), lampOff('10:50'), lampOn('11:30')], { handling: '12:30', full: 'never' }],
    ['begins the stage again when more than half is missing', [lampSet('10:10', 35), lampOff('10:50'), lampOn('11:31')], { handling: '12:51', full: 'never' }],
    ['begins again when the breaks together are more than half', [lampSet('10:10', 35), lampOff('10:30'), lampOn('10:52'), lampOff('10:55'), lampOn('11:20')], { handling: '12:40', full: 'never' }],
    ['is never run by a pad', [padSet('10:10', 55)], { handling: 'never', full: 'never' }],
    ['is not run by a pad seen on again', [padSet('10:10', 55), lampOff('10:20'), lampOn('10:30')], { handling: 'never', full: 'never' }],
    ['is interrupted by a pad in place of the lamp', [lampSet('10:10', 35), padSet('10:30', 55), lampSet('10:40', 35)], { handling: '12:00', full: 'never' }],
    ['goes on with the lamp that follows a pad', [padSet('10:10', 55), lampSet('10:30', 35)], { handling: '11:50', full: 'never' }],
    ['is stopped by a lamp turned down', [lampSet('10:10', 35), lampSet('10:30', 30)], { handling: 'never', full: 'never' }],
  ])('%s', (_name, heat, expected) => {
    expect(p2(...heat)).toEqual(expected);
  });
});

describe('the card K (lamp 30 for 60, then 60 for 90; 48 h on air of 20)', () => {
  it.each<[string, readonly HeatEvent[], { readonly handling: string; readonly full: string }]>([
    ['is on air alone full after two days, with no sheet time for handling', [], { handling: 'never', full: 'Wed 09:00' }],
    ['counts the wait for a thumb as real time', [lampSet('09:00', 30), lampSet('10:07', 60)], { handling: '10:00', full: '11:37' }],
  ])('%s', (_name, heat, expected) => {
    expect(dueTimes(cardNamed('K'), joint('09:00', heat))).toEqual(expected);
  });
});

it('lets a stranger redo the sum of a recipe with a break', () => {
  const history = joint('10:05', [lampSet('10:10', 35), lampOff('10:30'), lampOn('10:35')]);
  const handling = forecast(cardNamed('P2'), history).find((one) => one.kind === 'handling');
  if (handling === undefined) throw new Error('no handling');
  const pieces = handling.progress.pieces.map(({ from, to, source, wholeMinutes }) => `${said(from)}-${said(to)} ${source} ${wholeMinutes ?? 0}`);
  expect(pieces).toEqual(['10:10-10:30 lamp 100', '10:30-10:35 lamp off 0', '10:35-11:55 lamp 100']);
  expect(shareAt(handling.progress, on('10:30'))).toBeCloseTo(0.2, 12);
  expect(said(handling.dueAt)).toBe('11:55');
});
