import { describe, expect, it } from 'vitest';
import { Shift, warm } from '../../support/shift.js';

type Said = readonly [at: string, short: Parameters<Shift['says']>[2]];

/** P1 at 20 °C 300 min, at 30 °C 150 min; the shop's air is 20 °C. All closed at 08:00. */
const STORIES: readonly (readonly [name: string, entries: readonly Said[], due: string])[] = [
  ['nothing but the air', [], '13:00'],
  ['the panel moved: the clock starts again', [['09:00', { kind: 'moved', job: '501' }]], '14:00'],
  ['moved twice, the second entered late', [['09:00', { kind: 'moved', job: '501' }], ['10:00', { kind: 'moved', job: '501', at: '09:30' }]], '14:30'],
  ['moved, and taken back', [['09:00', { kind: 'moved', job: '501' }], ['09:05', { kind: 'undo' }]], '13:00'],
  // 30 min of 300 at the air, then 90 % of 150 min.
  ['a reading entered late', [['08:00', { kind: 'lamp', job: '501', setting: warm(30) }], ['10:00', { kind: 'read', job: '501', value: warm(30), at: '08:30' }]], '10:45'],
  ['a colder reading in between, entered late: the colder counts over the whole interval', [['08:00', { kind: 'lamp', job: '501', setting: warm(30) }], ['08:30', { kind: 'read', job: '501', value: warm(30) }], ['10:00', { kind: 'read', job: '501', value: warm(20), at: '09:00' }]], '13:00'],
  ['found off, nobody knows since when: heat counts to the last sign of life', [['08:00', { kind: 'lamp', job: '501', setting: warm(30) }], ['08:30', { kind: 'read', job: '501', value: warm(30) }], ['09:30', { kind: 'off', job: '501', since: 'unknown' }]], '13:00'],
  // Seen on at 09:00: 30 of 300 and 30 of 150 min, then 70 % of 300.
  ['the same, and then somebody remembers having seen it on', [['08:00', { kind: 'lamp', job: '501', setting: warm(30) }], ['08:30', { kind: 'read', job: '501', value: warm(30) }], ['09:30', { kind: 'off', job: '501', since: 'unknown' }], ['09:40', { kind: 'on', job: '501', at: '09:00' }]], '12:30'],
  ['heat, then moved: only what comes after counts', [['08:00', { kind: 'lamp', job: '501', setting: warm(30) }], ['08:30', { kind: 'read', job: '501', value: warm(30) }], ['09:00', { kind: 'moved', job: '501' }]], '11:30'],
];

function told(card: string, entries: readonly Said[], corrections: readonly Said[]): string {
  const shift = new Shift();
  shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card });
  const all = [...entries, ...corrections].sort(([one], [other]) => Number(one.replace(':', '')) - Number(other.replace(':', '')));
  for (const [at, short] of all) shift.enters('tomek', at, short);
  return shift.due('501', 'handling');
}

describe.each(STORIES)('%s', (_name, entries, due) => {
  it.each<[string, string, readonly Said[]]>([
    ['on the right card', 'P1', []],
    ['on a wrong card, corrected at once', 'K', [['08:00', { kind: 'wrong-card', job: '501', card: 'P1' }]]],
    ['on a wrong card, corrected in the middle', 'K', [['09:10', { kind: 'wrong-card', job: '501', card: 'P1' }]]],
    ['on a wrong card, corrected at the end', 'K', [['10:05', { kind: 'wrong-card', job: '501', card: 'P1' }]]],
    ['on a wrong card, corrected wrongly and then rightly', 'F1', [['08:20', { kind: 'wrong-card', job: '501', card: 'P2' }], ['09:45', { kind: 'wrong-card', job: '501', card: 'P1' }]]],
    ['on the right card, corrected by mistake, and the correction taken back', 'P1', [['10:05', { kind: 'wrong-card', job: '501', card: 'K' }], ['10:06', { kind: 'undo' }]]],
  ])('%s', (_how, card, corrections) => {
    expect(told(card, entries, corrections)).toBe(due);
  });
});

it('with a card too slow to be due when it was asked about, the check comes back at the right time', () => {
  const shift = new Shift();
  shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'K', setting: warm(30) });
  shift.enters('tomek', '09:01', { kind: 'check', job: '501', result: 'hard' });
  expect(shift.heard('handling')).toEqual(['09:00 handling tomek']);
  shift.enters('tomek', '09:05', { kind: 'wrong-card', job: '501', card: 'P1' });
  // What was called hard before the right card's time is no answer to its check.
  expect(shift.outlook('501').milestones.map((one) => one.check.phase)).toEqual(['open', 'open']);
  shift.until('13:00');
  expect(shift.heard('handling')).toEqual(['09:00 handling tomek', '13:00 handling tomek']);
});
