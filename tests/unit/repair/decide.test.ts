import { describe, expect, it } from 'vitest';
import type { Decision } from '../../../src/repair/decision.js';
import { entryNo, lampName } from '../../../src/repair/ids.js';
import { Shift, warm } from '../../support/shift.js';

const A = lampName('A');
const code = (decision: Decision): string => (decision.ok ? 'ok' : decision.refusal.code);

/** 501 with K under lamp A, handling due 10:00. */
function shiftWithK(): Shift {
  const shift = new Shift();
  shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card: 'K', setting: warm(30), lamp: A });
  return shift;
}

/** 502 with P1 and a reading of 88 °C. */
function shiftTooHot(): Shift {
  const shift = new Shift();
  shift.enters('tomek', '09:00', { kind: 'cure', job: '502', card: 'P1' });
  shift.enters('tomek', '09:10', { kind: 'read', job: '502', value: warm(88) });
  return shift;
}

function shiftSoftTwice(): Shift {
  const shift = shiftWithK();
  shift.enters('tomek', '10:00', { kind: 'check', job: '501', result: 'soft' });
  shift.enters('tomek', '10:15', { kind: 'check', job: '501', result: 'soft' });
  return shift;
}

function twoJobs(): Shift {
  const shift = shiftWithK();
  shift.enters('tomek', '09:01', { kind: 'cure', job: '510', card: 'P2', yes: true });
  return shift;
}

function twoJoints(): Shift {
  const shift = shiftWithK();
  shift.enters('tomek', '09:01', { kind: 'cure', job: '501', joint: 'j2', card: 'P2' });
  return shift;
}

function pasted(): Shift {
  const shift = new Shift();
  shift.enters('tomek', '09:00', { kind: 'paste', job: '501', card: 'P1' });
  return shift;
}

describe('what is refused, and why', () => {
  it.each<[string, () => Decision]>([
    ['which-job', () => twoJobs().says('tomek', '09:30', { kind: 'off' })],
    ['unknown-job', () => shiftWithK().says('tomek', '09:30', { kind: 'off', job: '510' })],
    ['which-joint', () => twoJoints().says('tomek', '09:30', { kind: 'read', job: '501', value: warm(30) })],
    ['which-card', () => new Shift().says('tomek', '09:30', { kind: 'cure', job: '501', card: 'X9' })],
    ['nothing-runs', () => shiftWithK().says('tomek', '09:30', { kind: 'off', job: '501', joint: 'j3' })],
    ['already-running', () => shiftWithK().says('tomek', '09:30', { kind: 'cure', job: '501', card: 'K' })],
    ['already-closed', () => shiftWithK().says('tomek', '09:30', { kind: 'closed', job: '501' })],
    ['not-closed', () => pasted().says('tomek', '09:30', { kind: 'moved', job: '501' })],
    ['future', () => pasted().says('tomek', '09:30', { kind: 'closed', job: '501', at: '11:40' })],
    ['long-ago', () => new Shift().says('tomek', '12:01', { kind: 'cure', job: '501', card: 'K', at: '10:00' })],
    ['before-step', () => pasted().says('tomek', '09:30', { kind: 'closed', job: '501', at: '08:50' })],
    ['before-step', () => shiftWithK().says('tomek', '09:30', { kind: 'moved', job: '501', at: '08:50' })],
    ['which-unit', () => shiftP2().says('tomek', '09:30', { kind: 'lamp', job: '501', setting: warm(131) })],
    ['over-lamp-maximum', () => shiftP2().says('tomek', '09:30', { kind: 'lamp', job: '501', setting: warm(61, 'C') })],
    ['no-next-stage', () => pasted().says('tomek', '09:30', { kind: 'lamp', job: '501' })],
    ['not-due', () => shiftWithK().says('tomek', '09:30', { kind: 'check', job: '501', result: 'hard' })],
    ['held', () => shiftTooHot().says('tomek', '12:00', { kind: 'check', job: '502', result: 'hard' })],
    ['held', () => shiftSoftTwice().says('tomek', '10:20', { kind: 'check', job: '501', result: 'hard' })],
    ['nothing-to-check', () => shiftWithK().says('tomek', '10:30', { kind: 'check', job: '501', milestone: 'sand', result: 'hard' })],
    ['nothing-to-check', () => shiftWithK().says('tomek', '09:10', { kind: 'later', job: '501' })],
    ['nothing-asked', () => new Shift().says('tomek', '09:30', { kind: 'off' })],
    ['no-heat', () => pasted().says('tomek', '09:30', { kind: 'off', job: '501' })],
    ['no-heat', () => pasted().says('tomek', '09:30', { kind: 'on', job: '501' })],
    ['lamp-elsewhere', () => twoJobs().says('tomek', '09:30', { kind: 'lamp', job: '510', setting: warm(35), lamp: A })],
    ['unknown-lamp', () => shiftWithK().says('tomek', '09:30', { kind: 'lamp', job: '501', setting: warm(30), lamp: lampName('Q') })],
    ['foreman-only', () => shiftTooHot().says('tomek', '09:30', { kind: 'release', job: '502' })],
    ['nothing-held', () => shiftWithK().says('ines', '09:30', { kind: 'release', job: '501' })],
    ['nothing-to-undo', () => shiftWithK().says('wren', '09:30', { kind: 'undo' })],
    ['undo-too-late', () => shiftWithK().says('tomek', '09:11', { kind: 'undo' })],
    ['not-yours', () => shiftWithK().says('wren', '09:01', { kind: 'undo', entry: entryNo(1) })],
  ])('%s', (expected, said) => {
    expect(code(said())).toBe(expected);
  });

  it('changes nothing', () => {
    const shift = shiftWithK();
    const before = shift.facts.length;
    for (const kind of ['closed', 'undo', 'later'] as const) shift.says('wren', '09:20', { kind, job: '501' });
    expect(shift.facts).toHaveLength(before);
  });
});

function shiftP2(): Shift {
  const shift = new Shift();
  shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card: 'P2' });
  return shift;
}

describe('a temperature without a unit', () => {
  it('above the maximum asks for the unit, with the line that means °F', () => {
    expect(shiftP2().says('tomek', '09:30', { kind: 'lamp', job: '501', setting: warm(131) })).toMatchObject({ refusal: { asCelsius: 55, line: 'lamp 501 131F' } });
  });
  it('does not offer °F where that is too much as well', () => {
    expect(shiftP2().says('tomek', '09:30', { kind: 'lamp', job: '501', setting: warm(400) })).toMatchObject({ refusal: { asCelsius: null } });
  });
  it('is °F in a shop that counts so', () => {
    const shift = new Shift({ unit: 'F' });
    shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card: 'P2', setting: warm(95) });
    expect(shift.outlook('501').heat.setting).toBe(35);
  });
});

describe('times', () => {
  it.each<[string, string, boolean, string]>([
    ['two hours back is fine', '10:00', false, 'ok'],
    ['a minute more asks', '09:59', false, 'long-ago'],
    ['and a yes goes through', '09:59', true, 'ok'],
    ['a minute ahead is a clock that differs', '12:01', false, 'ok'],
    ['more is the future, yes or no', '12:02', true, 'future'],
  ])('%s', (_name, at, yes, expected) => {
    expect(code(new Shift().says('tomek', '12:00', { kind: 'cure', job: '501', card: 'P1', at, yes }))).toBe(expected);
  });

  it('a range counts from its later end for strength and from its earlier end for open time', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:30', { kind: 'paste', job: '501', card: 'P1', from: '09:00', at: '09:10' });
    expect(shift.outlook('501').open).toMatchObject({ at: Date.UTC(2026, 2, 2, 10, 0) });
    shift.enters('tomek', '09:55', { kind: 'closed', job: '501', from: '09:40', at: '09:50' });
    expect(shift.due('501', 'handling')).toBe('14:50');
  });
});

describe('who is meant', () => {
  it('the thread', () => {
    expect(twoJobs().says('tomek', '09:30', { kind: 'off' }, '501')).toMatchObject({ ok: true, about: { job: '501' } });
  });
  it('the job whose question went to this person last', () => {
    const shift = twoJobs();
    shift.until('10:00');
    expect(shift.says('tomek', '10:01', { kind: 'check', result: 'hard' })).toMatchObject({ ok: true, about: { job: '501' } });
  });
  it('the lamp', () => {
    expect(twoJobs().says('wren', '09:30', { kind: 'off', lamp: A })).toMatchObject({ ok: true, about: { job: '501' } });
  });
  it('the only joint with heat', () => {
    expect(twoJoints().says('tomek', '09:30', { kind: 'off', job: '501' })).toMatchObject({ ok: true, about: { cure: { joint: 'j1' } } });
  });
  it('the joint that is not closed yet', () => {
    const shift = shiftWithK();
    shift.enters('tomek', '09:10', { kind: 'paste', job: '501', joint: 'j2', card: 'P1' });
    expect(shift.says('tomek', '09:30', { kind: 'closed', job: '501' })).toMatchObject({ ok: true, about: { cure: { joint: 'j2' } } });
  });
  it('the cure on the same joint that was asked about last', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card: 'T1' });
    shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card: 'E1' });
    shift.until('09:30');
    // E1 may be painted over from 09:30 as well, said after T1's sanding time.
    expect(shift.says('tomek', '09:31', { kind: 'check', job: '501', milestone: 'sand', result: 'hard' })).toMatchObject({ about: { cure: { card: 'T1' } } });
    expect(shift.says('tomek', '09:32', { kind: 'check', job: '501', result: 'hard' })).toMatchObject({ about: { cure: { card: 'E1' } } });
  });
  it('jobs with nearly the same number are offered', () => {
    expect(shiftWithK().says('tomek', '09:30', { kind: 'off', job: '510' })).toMatchObject({ refusal: { choices: [{ job: '501' }] } });
  });
});

describe('the same again', () => {
  it.each<[string, (shift: Shift) => Decision, string]>([
    ['hard twice', (shift) => (shift.enters('tomek', '10:01', { kind: 'check', job: '501', result: 'hard' }), shift.says('wren', '10:01:01', { kind: 'check', job: '501', result: 'hard' })), 'already-confirmed'],
    ['soft twice before the recheck', (shift) => (shift.enters('tomek', '10:01', { kind: 'check', job: '501', result: 'soft' }), shift.says('wren', '10:02', { kind: 'check', job: '501', result: 'soft' })), 'already-confirmed'],
    ['off twice', (shift) => (shift.enters('tomek', '09:10', { kind: 'off', job: '501' }), shift.says('wren', '09:11', { kind: 'off', job: '501' })), 'already-so'],
    ['up without a next stage', (shift) => (shift.enters('tomek', '10:10', { kind: 'lamp', job: '501', setting: warm(60), yes: true, at: '10:10' }), shift.says('wren', '10:11', { kind: 'lamp', job: '501' })), 'already-so'],
  ])('%s writes nothing and says so', (_name, said, note) => {
    expect(said(shiftWithK())).toMatchObject({ ok: true, facts: [], notes: [{ note }] });
  });

  it('but up in the morning, after the lamp was left at closing time, is a new start', () => {
    const shift = new Shift();
    shift.enters('tomek', '15:00', { kind: 'cure', job: '501', card: 'P2', setting: warm(55) });
    expect(shift.says('tomek', 'Tue 08:00', { kind: 'lamp', job: '501' })).toMatchObject({ ok: true, facts: [{ fact: { type: 'lamp-set', setting: 55 } }] });
  });
});

describe('notes', () => {
  it.each<[string, (shift: Shift) => Decision]>([
    ['bare-metal', (shift) => shift.says('tomek', '09:10', { kind: 'read', job: '501', value: warm(30), method: 'bare' })],
    ['below-stage', (shift) => shift.says('tomek', '09:10', { kind: 'lamp', job: '501', setting: warm(25) })],
    ['stored-heat', (shift) => (shift.enters('tomek', '09:10', { kind: 'off', job: '501' }), shift.says('tomek', '09:11', { kind: 'read', job: '501', value: warm(30) }))],
    ['confirmed', (shift) => shift.says('tomek', '10:01', { kind: 'check', job: '501', result: 'hard' })],
    ['soft', (shift) => shift.says('tomek', '10:01', { kind: 'check', job: '501', result: 'soft' })],
    ['two-answers', (shift) => (shift.enters('tomek', '10:01', { kind: 'check', job: '501', result: 'hard' }), shift.says('wren', '10:01:02', { kind: 'check', job: '501', result: 'soft' }))],
    ['undone', (shift) => shift.says('tomek', '09:05', { kind: 'undo' })],
  ])('%s', (note, said) => {
    expect(said(shiftWithK())).toMatchObject({ ok: true, notes: [{ note }] });
  });

  it('over-maximum', () => {
    expect(shiftTooHot().says('tomek', '09:20', { kind: 'read', job: '502', value: warm(86) })).toMatchObject({ notes: [{ note: 'over-maximum', value: 86, maximum: 85 }] });
  });

  it('a reading on bare metal never counts', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card: 'P1' });
    shift.enters('tomek', '09:10', { kind: 'read', job: '501', value: warm(88), method: 'bare' });
    expect(shift.due('501', 'handling')).toBe('14:00');
    expect(shift.outlook('501').overMaximum).toBeNull();
    expect(shift.outlook('501').cure.readings).toHaveLength(1);
  });
});

describe('taking back', () => {
  it('is for the foreman at any time, and for anybody', () => {
    expect(code(shiftWithK().says('ines', '15:00', { kind: 'undo', entry: entryNo(1) }))).toBe('ok');
  });

  it('takes nothing back that the bot said', () => {
    const shift = shiftWithK();
    shift.until('10:00');
    expect(shift.heard()).toEqual(['10:00 handling tomek']);
    expect(code(shift.says('ines', '10:01', { kind: 'undo', entry: entryNo(2) }))).toBe('nothing-to-undo');
  });

  it('takes the same entry back once', () => {
    const shift = shiftWithK();
    shift.enters('tomek', '09:01', { kind: 'undo', entry: entryNo(1) });
    expect(code(shift.says('tomek', '09:02', { kind: 'undo', entry: entryNo(1) }))).toBe('nothing-to-undo');
  });

  it('leaves nothing behind for the same card started again on that joint', () => {
    const shift = pasted();
    shift.enters('tomek', '09:05', { kind: 'closed', job: '501' });
    shift.enters('tomek', '09:06', { kind: 'undo', entry: entryNo(1) });
    shift.enters('tomek', '09:08', { kind: 'paste', job: '501', card: 'P1' });
    expect(shift.outlook('501').cure).toMatchObject({ closed: null, ref: { run: 2 } });
  });
});

describe('a joint that moves', () => {
  it('takes every cure on it along, and no other joint', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1' });
    shift.enters('tomek', '08:10', { kind: 'cure', job: '501', card: 'S1' });
    shift.enters('tomek', '08:20', { kind: 'cure', job: '501', joint: 'j2', card: 'P1' });
    shift.enters('tomek', '09:00', { kind: 'moved', job: '501', joint: 'j1' });
    expect(shift.outlooks('501').map(({ cure }) => cure.moved.length)).toEqual([1, 1, 0]);
  });
});

it('too much heat on a cure that is finished can still be answered when nothing else runs on the job', () => {
  const shift = new Shift();
  for (const card of ['F1', 'P1']) shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card });
  shift.enters('tomek', '09:00', { kind: 'read', job: '501', value: warm(60) });
  shift.enters('tomek', '09:46', { kind: 'check', job: '501', milestone: 'sand', result: 'hard' });
  shift.enters('tomek', '09:50', { kind: 'read', job: '501', value: warm(80) });
  shift.enters('tomek', '13:00', { kind: 'check', job: '501', milestone: 'full', result: 'hard' });
  const alarms = () => shift.plan().map((one) => `${one.cure.card} ${one.kind}`);
  expect(alarms()).toEqual(['F1 safety', 'F1 safety', 'F1 safety']);
  shift.enters('tomek', '13:01', { kind: 'off', job: '501' });
  expect(alarms()).toEqual([]);
});
