import { expect, it } from 'vitest';
import { celsius } from '../../../src/cure/units.js';
import { jointNo } from '../../../src/repair/ids.js';
import type { ProcedureStep } from '../../../src/repair/procedure.js';
import { warm } from '../../support/shift.js';
import { aStep, code, Walk } from '../../support/walk.js';

const job = '501';
const cold = (id: string, joint: string): ProcedureStep => aStep(id, { needs: [{ need: 'joint-below', joint: jointNo(joint), temperature: celsius(40) }] });

/** K: lamp 30 for 60 min, then 60 for 90. */
function hardened(...steps: readonly ProcedureStep[]): Walk {
  const walk = Walk.through(...steps);
  walk.enters('tomek', '08:00', { kind: 'cure', job, card: 'K', setting: warm(30) });
  walk.enters('tomek', '09:01', { kind: 'check', job, milestone: 'handling', result: 'hard' });
  walk.enters('tomek', '09:02', { kind: 'lamp', job, setting: warm(60) });
  walk.enters('tomek', '10:35', { kind: 'off', job });
  walk.enters('tomek', '10:36', { kind: 'check', job, milestone: 'full', result: 'hard' });
  return walk;
}

it('a joint that has become hard is read all the same, and the reading opens what waits for cold metal', () => {
  const walk = hardened(cold('grind', 'j1'));
  expect(walk.stands('grind', '10:40')).toBe('blocked too-hot');
  walk.enters('tomek', '10:45', { kind: 'read', job, value: warm(52) });
  expect(walk.stands('grind', '10:46')).toBe('blocked too-hot');
  walk.enters('tomek', '11:15', { kind: 'read', job, value: warm(31) });
  expect(walk.stands('grind', '11:16')).toBe('open');
});

it('bare metal opens nothing', () => {
  const walk = hardened(cold('grind', 'j1'));
  walk.enters('tomek', '10:45', { kind: 'read', job, value: warm(31), method: 'bare' });
  expect(walk.stands('grind', '10:46')).toBe('blocked too-hot');
});

it('asks which joint where two wait for it, and takes the one that is named', () => {
  const walk = hardened(cold('grind', 'j1'), cold('drill', 'j2'));
  const asked = walk.says('tomek', '10:45', { kind: 'read', job, value: warm(31) });
  expect(!asked.ok && asked.refusal.code === 'which-joint' ? asked.refusal.choices.map(({ line }) => line) : []).toEqual(['read 501 j1 31', 'read 501 j2 31']);
  walk.enters('tomek', '10:46', { kind: 'read', job, joint: 'j1', value: warm(31) });
  expect(walk.stands('grind', '10:47')).toBe('open');
});

it('without a procedure there is nothing to read for', () => {
  const walk = new Walk([]);
  walk.enters('tomek', '08:00', { kind: 'cure', job, card: 'K', setting: warm(30) });
  walk.enters('ines', '08:10', { kind: 'scrap', job, reason: 'wrong panel' });
  expect(code(walk.says('tomek', '08:20', { kind: 'read', job, value: warm(31) }))).toBe('nothing-runs');
});
