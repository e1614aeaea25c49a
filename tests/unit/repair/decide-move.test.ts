import { describe, expect, it } from 'vitest';
import { decide } from '../../../src/repair/decide.js';
import type { Decision } from '../../../src/repair/decision.js';
import { jobNo } from '../../../src/repair/ids.js';
import { on, said } from '../../support/joint.js';
import { Shift, warm } from '../../support/shift.js';

function moves(shift: Shift, who: string, when: string, from: string, to: string): Decision {
  shift.until(when);
  const decision = decide({ kind: 'move', from: jobNo(from), to: jobNo(to) }, shift.situation(who, on(when)));
  if (decision.ok) shift.enter(who, on(when), decision.facts);
  return decision;
}

const cures = (shift: Shift, job: string): string[] => shift.outlooks(job).map(({ cure }) => `${cure.ref.joint} ${cure.card.name} ${said(cure.start)} ${cure.owner}`);

describe('a cure that was entered on the wrong job', () => {
  function bumper(): Shift {
    const shift = new Shift();
    shift.enters('wren', '08:20', { kind: 'cure', job: '7219', card: 'T1' });
    moves(shift, 'tomek', '08:24', '7219', '7211');
    return shift;
  }

  it('goes over with all its times, and leaves only the move', () => {
    const shift = bumper();
    expect(cures(shift, '7211')).toEqual(['j1 T1 08:20 wren']);
    expect(shift.due('7211', 'sand')).toBe('08:50');
    expect(cures(shift, '7219')).toEqual([]);
    expect(shift.job('7219').live.map(({ fact, by }) => `${fact.type} ${by}`)).toEqual(['moved-away tomek']);
    expect(shift.outlook('7211').cure.cameFrom).toBe('7219');
  });

  it('takes its reminders along', () => {
    const shift = bumper();
    shift.until('08:51');
    expect(shift.posts.map(({ job, kind, to, saidAt }) => `${said(saidAt)} ${job} ${kind} ${to}`)).toEqual(['08:50 7211 sand wren']);
  });

  it('says it again for the right car where it was said for the wrong one', () => {
    const shift = new Shift();
    shift.enters('wren', '08:20', { kind: 'cure', job: '7219', card: 'T1' });
    moves(shift, 'wren', '08:52', '7219', '7211');
    shift.wakesUp('08:52');
    expect(shift.posts.map(({ job, saidAt }) => `${said(saidAt)} ${job}`)).toEqual(['08:50 7219', '08:52 7211']);
  });

  it('says where it went to whoever asks for it there', () => {
    expect(bumper().says('tomek', '08:30', { kind: 'read', job: '7219', value: warm(40) })).toMatchObject({ ok: false, refusal: { code: 'moved-away', to: '7211', cards: ['T1'], by: 'tomek' } });
  });

  it('comes back whole when the move is taken back', () => {
    const shift = bumper();
    shift.enters('tomek', '08:26', { kind: 'undo' });
    expect(cures(shift, '7219')).toEqual(['j1 T1 08:20 wren']);
    expect(cures(shift, '7211')).toEqual([]);
  });

  it('can go back by another move', () => {
    const shift = bumper();
    moves(shift, 'tomek', '08:30', '7211', '7219');
    expect(cures(shift, '7219')).toEqual(['j1 T1 08:20 wren']);
    expect(shift.due('7219', 'sand')).toBe('08:50');
    expect(cures(shift, '7211')).toEqual([]);
  });

  it('keeps heat, readings and checks, each by whoever entered it', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '7219', card: 'P1', setting: warm(65) });
    shift.enters('tomek', '08:10', { kind: 'read', job: '7219', value: warm(65) });
    shift.enters('ines', '08:40', { kind: 'check', job: '7219', milestone: 'handling', result: 'hard' });
    const due = shift.due('7219', 'full');
    moves(shift, 'wren', '08:45', '7219', '7211');
    expect(shift.due('7211', 'full')).toBe(due);
    expect(shift.outlook('7211').milestones[0]?.check).toMatchObject({ phase: 'confirmed', answer: { by: 'ines', at: on('08:40') } });
    expect(shift.outlook('7211').cure.readings.map(({ by }) => by)).toEqual(['tomek']);
    expect(shift.job('7219').live.map(({ fact }) => fact.type)).toEqual(['moved-away']);
  });

  it('takes the card that it was corrected to', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '7219', card: 'P1' });
    shift.enters('tomek', '08:05', { kind: 'wrong-card', job: '7219', card: 'P2' });
    moves(shift, 'tomek', '08:10', '7219', '7211');
    expect(cures(shift, '7211')).toEqual(['j1 P2 08:00 tomek']);
  });

  it('takes the fire watch and its hot work with it', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'weld', job: '7219' });
    shift.enters('tomek', '08:10', { kind: 'done', job: '7219', step: 'weld' });
    moves(shift, 'tomek', '08:15', '7219', '7211');
    expect(shift.due('7211', 'fire-watch')).toBe('09:10');
    expect(shift.outlook('7211').cure.hotWork).toMatchObject([{ at: on('08:00'), ended: true }]);
    expect(shift.outlooks('7219')).toEqual([]);
  });

  it('stands on a joint of its own where something is entered on the same one already, so that neither has the other\'s heat', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '7211', card: 'P1' });
    const due = shift.due('7211', 'handling');
    shift.enters('wren', '08:20', { kind: 'cure', job: '7219', card: 'T1' });
    shift.enters('wren', '08:21', { kind: 'read', job: '7219', value: warm(50) });
    moves(shift, 'wren', '08:24', '7219', '7211');
    expect(cures(shift, '7211')).toEqual(['j1 P1 08:00 tomek', 'j2 T1 08:20 wren']);
    expect(said(shift.outlooks('7211')[0]?.milestones[0]?.check.dueAt ?? null)).toBe(due);
  });

  it('goes with every other that still runs there; what is over stays', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '7219', card: 'T1' });
    shift.enters('tomek', '08:31', { kind: 'check', job: '7219', milestone: 'sand', result: 'hard' });
    shift.enters('tomek', '08:40', { kind: 'cure', job: '7219', card: 'P1', joint: 'j2' });
    shift.enters('tomek', '08:41', { kind: 'cure', job: '7219', card: 'E1', joint: 'j3' });
    moves(shift, 'tomek', '08:45', '7219', '7211');
    expect(cures(shift, '7219')).toEqual(['j1 T1 08:00 tomek']);
    expect(cures(shift, '7211')).toEqual(['j2 P1 08:40 tomek', 'j3 E1 08:41 tomek']);
  });
});

describe('a move is refused', () => {
  it('where nothing runs', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '7219', card: 'T1' });
    shift.enters('tomek', '08:01', { kind: 'scrap', job: '7219' });
    expect(moves(shift, 'tomek', '08:10', '7219', '7211')).toMatchObject({ ok: false, refusal: { code: 'nothing-runs' } });
  });

  it('from a job that nobody entered, with what may have been meant', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '7219', card: 'T1' });
    expect(moves(shift, 'tomek', '08:10', '7218', '7211')).toMatchObject({ ok: false, refusal: { code: 'unknown-job', choices: [{ job: '7219', line: 'move 7219>7211' }] } });
  });

  it('onto the same job', () => {
    expect(moves(new Shift(), 'tomek', '08:10', '7219', '7219')).toMatchObject({ ok: false, refusal: { code: 'onto-itself' } });
  });

  it('where the same card runs on that joint already', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '7211', card: 'T1' });
    shift.enters('tomek', '08:05', { kind: 'cure', job: '7219', card: 'T1' });
    expect(moves(shift, 'tomek', '08:10', '7219', '7211')).toMatchObject({ ok: false, refusal: { code: 'card-runs-there', job: '7211' } });
  });
});
