import { describe, expect, it } from 'vitest';
import type { Decision } from '../../../src/repair/decision.js';
import { entryNo, lampName } from '../../../src/repair/ids.js';
import { Shift, warm } from '../../support/shift.js';

const code = (decision: Decision): string => (decision.ok ? 'ok' : decision.refusal.code);
const stands = (shift: Shift, job = '501') => shift.outlooks(job).map(({ cure }) => `${cure.ref.joint} ${cure.ref.card}#${cure.ref.run}`);

function shiftWith(...cards: string[]): Shift {
  const shift = new Shift();
  cards.forEach((card, index) => shift.enters('tomek', `08:0${index}`, { kind: 'cure', job: '501', joint: 'j1', card }));
  return shift;
}

describe('another material all along', () => {
  it('takes everything along that was entered, and keeps what was entered in the book', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1' });
    shift.enters('tomek', '08:10', { kind: 'closed', job: '501' });
    shift.enters('tomek', '08:11', { kind: 'lamp', job: '501', setting: warm(35), lamp: lampName('A') });
    shift.enters('tomek', '08:30', { kind: 'wrong-card', job: '501', card: 'p2' });
    expect(stands(shift)).toEqual(['j1 P2#1']);
    // P2: lamp 35 °C for 80 min from switch-on.
    expect(shift.due('501', 'handling')).toBe('09:31');
    expect(shift.outlook('501').cure.pasted).not.toBeNull();
    expect(shift.job('501').all.map(({ fact }) => fact.type)).toEqual(['cure-opened', 'pasted', 'closed', 'lamp-set', 'card-corrected']);
    expect(shift.job('501').all.flatMap(({ fact }) => (fact.type === 'cure-opened' ? [fact.card.name] : []))).toEqual(['P1']);
  });

  it('what is entered afterwards is about the right one, and about the first again when the correction is taken back', () => {
    const shift = shiftWith('P1');
    shift.enters('tomek', '08:30', { kind: 'wrong-card', job: '501', card: 'F1' });
    shift.enters('tomek', '08:31', { kind: 'moved', job: '501' });
    expect(shift.outlook('501').cure.moved).toHaveLength(1);
    shift.enters('tomek', '08:32', { kind: 'undo', entry: entryNo(2) });
    expect(stands(shift)).toEqual(['j1 P1#1']);
    expect(shift.due('501', 'handling')).toBe('13:31');
  });

  it('twice is two entries that can be taken back one by one', () => {
    const shift = shiftWith('P1');
    shift.enters('tomek', '08:10', { kind: 'wrong-card', job: '501', card: 'K' });
    shift.enters('tomek', '08:12', { kind: 'wrong-card', job: '501', card: 'P1' });
    expect(stands(shift)).toEqual(['j1 P1#2']);
    shift.enters('tomek', '08:13', { kind: 'undo' });
    expect(stands(shift)).toEqual(['j1 K#1']);
    shift.enters('tomek', '08:14', { kind: 'undo' });
    expect(stands(shift)).toEqual(['j1 P1#1']);
  });

  it('never takes the name of a run that was taken back', () => {
    const shift = shiftWith('P1');
    shift.enters('tomek', '08:10', { kind: 'wrong-card', job: '501', card: 'K' });
    shift.enters('tomek', '08:11', { kind: 'undo' });
    shift.enters('tomek', '08:12', { kind: 'wrong-card', job: '501', card: 'K' });
    expect(stands(shift)).toEqual(['j1 K#2']);
    shift.enters('tomek', '08:13', { kind: 'cure', job: '501', joint: 'j1', card: 'P1' });
    expect(stands(shift)).toEqual(['j1 K#2', 'j1 P1#2']);
  });

  it.each<[string, () => Decision]>([
    ['which-card', () => shiftWith('P1').says('tomek', '08:30', { kind: 'wrong-card', job: '501', card: 'X9' })],
    ['same-card', () => shiftWith('P1').says('tomek', '08:30', { kind: 'wrong-card', job: '501', card: 'P1' })],
    ['card-runs-there', () => shiftWith('K', 'P1').says('tomek', '08:30', { kind: 'wrong-card', job: '501', card: 'K' })],
    ['two-cures-there', () => shiftWith('P1', 'K').says('tomek', '08:30', { kind: 'wrong-card', job: '501', card: 'P2' })],
    ['unknown-job', () => shiftWith('P1').says('tomek', '08:30', { kind: 'wrong-card', job: '777', card: 'P2' })],
    ['nothing-asked', () => new Shift().says('tomek', '08:30', { kind: 'wrong-card', card: 'P2' })],
  ])('%s', (expected, said) => {
    expect(code(said())).toBe(expected);
  });

  it('offers every other card for one that is not on the shelf', () => {
    const decision = shiftWith('P1').says('tomek', '08:30', { kind: 'wrong-card', job: '501', card: 'X9' });
    const choices = !decision.ok && decision.refusal.code === 'which-card' ? decision.refusal.choices : [];
    expect(choices.map(({ card }) => card)).toEqual(['C1', 'E1', 'F1', 'G1', 'K', 'P2', 'S1', 'T1', 'W1']);
    expect(choices).toContainEqual({ card: 'P2', line: 'card 501 j1 P2' });
  });

  it('is about the adhesive where a sealant runs on the same joint, and about the sealant for another sealant', () => {
    const shift = shiftWith('P1', 'S1');
    shift.enters('tomek', '08:30', { kind: 'wrong-card', job: '501', card: 'K' });
    expect(stands(shift)).toEqual(['j1 K#1', 'j1 S1#1']);
    shift.enters('tomek', '08:31', { kind: 'wrong-card', job: '501', card: 'W1' });
    expect(stands(shift)).toEqual(['j1 K#1', 'j1 W1#1']);
  });

  it('can be found out after everything was confirmed', () => {
    const shift = shiftWith('T1');
    shift.enters('tomek', '08:31', { kind: 'check', job: '501', milestone: 'sand', result: 'hard' });
    shift.enters('tomek', '08:40', { kind: 'wrong-card', job: '501', card: 'F1' });
    expect(stands(shift)).toEqual(['j1 F1#1']);
    expect(shift.plan().length).toBeGreaterThan(0);
  });
});

describe('holds are worked out anew', () => {
  it('a decision on the wrong material does not let the right one go on, and the foreman is asked again', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P2' });
    shift.enters('tomek', '09:10', { kind: 'closed', job: '501' });
    shift.enters('ines', '09:12', { kind: 'release', job: '501' });
    shift.enters('tomek', '09:15', { kind: 'wrong-card', job: '501', card: 'P1' });
    shift.until('09:20');
    expect(shift.heard('decision')).toEqual(['08:50 decision ines', '09:15 decision ines']);
    shift.enters('ines', '09:21', { kind: 'release', job: '501' });
    shift.enters('tomek', '09:22', { kind: 'undo', entry: shift.facts.find(({ fact }) => fact.type === 'card-corrected')?.entry ?? entryNo(0) });
    shift.until('12:00');
    // The first decision was about this very material and stands.
    expect(shift.heard('decision')).toEqual(['08:50 decision ines', '09:15 decision ines']);
  });

  it('an open limit that the wrong card had passed is no hold of a card with a later one', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P2' });
    shift.enters('tomek', '08:55', { kind: 'closed', job: '501' });
    expect(shift.outlook('501').openPassed).not.toBeNull();
    shift.enters('tomek', '08:56', { kind: 'wrong-card', job: '501', card: 'P1' });
    expect(shift.outlook('501').openPassed).toBeNull();
  });

  it('a reading over the right card\'s maximum holds at once, and the note says so', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1' });
    shift.enters('tomek', '08:10', { kind: 'read', job: '501', value: warm(75) });
    expect(shift.says('tomek', '08:20', { kind: 'wrong-card', job: '501', card: 'P2' })).toMatchObject({ notes: [{ note: 'card-changed' }, { note: 'over-maximum', value: 75, maximum: 60 }] });
    expect(shift.outlook('501').overMaximum).not.toBeNull();
    shift.until('08:21');
    expect(shift.heard('safety')).toEqual(['08:20 safety tomek', '08:20 safety ines', '08:20 safety wren']);
  });

  it.each<[string, number, string, object[]]>([
    ['a lamp above the maximum', 65, 'P2', [{ note: 'lamp-over-maximum', setting: 65, maximum: 60 }]],
    ['a lamp below every stage', 30, 'P2', [{ note: 'below-stage', asked: 35 }]],
    ['a lamp that fits', 35, 'P2', []],
  ])('%s is noted', (_name, setting, card, notes) => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1', setting: warm(setting) });
    const decision = shift.says('tomek', '08:20', { kind: 'wrong-card', job: '501', card });
    expect(decision.ok ? decision.notes.slice(1) : decision).toEqual(notes);
  });
});
