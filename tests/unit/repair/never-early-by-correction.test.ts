import { describe, expect, it } from 'vitest';
import type { MaterialCard } from '../../../src/cure/card.js';
import { minutes } from '../../../src/cure/units.js';
import { decide } from '../../../src/repair/decide.js';
import type { EntryCommand } from '../../../src/repair/commands.js';
import { jobNo, lampName } from '../../../src/repair/ids.js';
import type { Outlook } from '../../../src/repair/outlook.js';
import { CARDS, cardNamed } from '../../support/card-shelf.js';
import { on, said } from '../../support/joint.js';
import { hears } from '../../support/spoken.js';
import { Shift, warm } from '../../support/shift.js';

const only = (shift: Shift, job: string): Outlook => {
  const [first] = shift.outlooks(job);
  if (first === undefined) throw new Error(`Nothing runs on ${job}.`);
  return first;
};
const due = (shift: Shift, job: string): string => said(only(shift, job).milestones[0]?.check.dueAt ?? null);
const held = (shift: Shift): string => said(only(shift, '501').dew?.heldSince ?? null);

describe('taking back an entry that is about two jobs', () => {
  it('takes back both halves', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'air', value: warm(20) });
    shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1', setting: warm(40), lamp: lampName('A') });
    shift.enters('tomek', '08:01', { kind: 'cure', job: '502', card: 'P1', setting: warm(65), lamp: lampName('A'), at: '08:01', yes: true });
    expect(only(shift, '501').heat.lamp).toBe('off');
    shift.enters('tomek', '08:02', { kind: 'undo' });
    expect(shift.outlooks('502')).toEqual([]);
    expect(only(shift, '501').heat.lamp).toBe('on');
  });
});

describe('the water in the air', () => {
  it('that was read long before the joint began is not known', () => {
    const shift = new Shift();
    shift.enters('tomek', 'Mon 08:00', { kind: 'air', value: warm(10), humidity: 50 });
    shift.enters('tomek', 'Wed 08:30', { kind: 'cure', job: '501', card: 'G1' });
    // Unknown humidity is the worst row.
    expect(due(shift, '501')).toBe('Wed 16:30');
  });

  it('is drier in percent once the air is warmer', () => {
    const shift = new Shift();
    shift.enters('tomek', 'Tue 07:00', { kind: 'air', value: warm(8), humidity: 60 });
    shift.enters('tomek', 'Tue 07:35', { kind: 'cure', job: '501', card: 'G1' });
    // 8 °C and 60 % warmed to the usual 20 °C is about 27 %: below the row of 30 %. At 8 °C it is that row as well.
    expect(due(shift, '501')).toBe('Tue 15:35');
  });

  it('counts the drier of two readings for all of the time between them', () => {
    const shift = new Shift();
    shift.enters('tomek', 'Tue 08:00', { kind: 'air', value: warm(20), humidity: 50 });
    shift.enters('tomek', 'Tue 08:00', { kind: 'cure', job: '501', card: 'S1', depth: 3 });
    expect(due(shift, '501')).toBe('Wed 08:00');
    shift.enters('tomek', 'Wed 07:30', { kind: 'air', value: warm(12), humidity: 40 });
    // 5.6 hPa instead of 11.7: about half the rate over 23 and a half hours.
    expect(due(shift, '501')).toMatch(/^Thu /);
  });

  it('is called an assumption where the wait is longer than a reading stands', () => {
    const shift = new Shift();
    shift.enters('tomek', 'Tue 08:00', { kind: 'air', value: warm(20), humidity: 50 });
    expect(hears(shift, 'tomek', 'Tue 08:00', { kind: 'cure', job: '501', card: 'S1', depth: 3 }).lines[1]).toBe('Through-cure time earliest Wed 08:00, likely later.');
    expect(hears(shift, 'tomek', 'Tue 08:05', { kind: 'cure', job: '502', card: 'G1' }).lines[1]).toBe('Standing time 09:35 by the clock.');
  });
});

describe('damp metal', () => {
  const damp = (): Shift => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'air', value: warm(18), humidity: 70 });
    return shift;
  };

  it('entered after the foreman let something else go on is still to be decided', () => {
    const shift = damp();
    shift.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1' });
    shift.enters('tomek', '09:10', { kind: 'closed', job: '501' });
    shift.enters('ines', '09:15', { kind: 'release', job: '501', reason: 'limit judged' });
    shift.enters('tomek', '09:20', { kind: 'read', job: '501', value: warm(13), at: '08:10' });
    expect(held(shift)).toBe('08:10');
  });

  it('worse than what was let go on is to be decided anew, also when it comes late', () => {
    const shift = damp();
    shift.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1' });
    shift.enters('tomek', '08:02', { kind: 'read', job: '501', value: warm(15) });
    shift.enters('ines', '08:05', { kind: 'release', job: '501', reason: 'judged' });
    expect(held(shift)).toBe('never');
    shift.enters('tomek', '08:10', { kind: 'read', job: '501', value: warm(12), at: '08:03' });
    expect(held(shift)).toBe('08:03');
  });

  it('is seen on a joint that had a lamp long before', () => {
    const shift = damp();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'F1', setting: warm(60) });
    shift.enters('tomek', '08:10', { kind: 'off', job: '501' });
    shift.enters('tomek', '08:12', { kind: 'scrap', job: '501', reason: 'wrong place' });
    shift.enters('tomek', '08:15', { kind: 'paste', job: '501', card: 'P1' });
    shift.enters('tomek', '08:16', { kind: 'read', job: '501', value: warm(13) });
    expect(shift.outlooks('501').at(-1)?.dew?.heldSince).toBe(on('08:16'));
  });

  it('read shortly before the bead counts, and the answer says what was read', () => {
    const shift = damp();
    shift.enters('tomek', '08:10', { kind: 'paste', job: '501', card: 'P1' });
    expect(hears(shift, 'tomek', '08:11', { kind: 'read', job: '501', value: warm(13), at: '08:05' }).lines[0]).toBe('501 reading 13 °C before the paste.');
    expect(held(shift)).toBe('08:10');
  });
});

describe('a card that was frozen', () => {
  it('comes back as it was, whatever the file says today', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1' });
    shift.enters('tomek', '08:01', { kind: 'wrong-card', job: '501', card: 'P2' });
    const faster: MaterialCard = { ...cardNamed('P1'), version: 'newer', milestones: cardNamed('P1').milestones.map((rule) => ({ ...rule, laws: [{ law: 'elapsed', minutes: minutes(60) }] })) };
    const cards = CARDS.map((card) => (card.name === 'P1' ? faster : card));
    const back: EntryCommand = { kind: 'wrong-card', job: jobNo('501'), joint: null, card: 'P1' };
    const decision = decide(back, { ...shift.situation('tomek', on('08:02'), null), cards });
    if (!decision.ok) throw new Error(decision.refusal.code);
    shift.enter('tomek', on('08:02'), decision.facts);
    expect(only(shift, '501').cure.card.version).toBe('example 1');
    expect(due(shift, '501')).toBe('13:00');
  });
});
