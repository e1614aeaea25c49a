import { describe, expect, it } from 'vitest';
import type { Decision } from '../../../src/repair/decision.js';
import { Shift } from '../../support/shift.js';

const code = (decision: Decision): string => (decision.ok ? 'ok' : decision.refusal.code);

/** The example shop with humid air, so that a bead hardens at all. */
function damp(): Shift {
  const shift = new Shift();
  shift.enters('tomek', '07:59', { kind: 'air', value: { value: 20, unit: null }, humidity: 60 });
  return shift;
}

describe('the depth of a bead', () => {
  it('is asked for: without it there is no time, with it there is', () => {
    const shift = damp();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'S1' });
    expect(shift.due('501', 'through')).toBe('never');
    shift.enters('tomek', '08:05', { kind: 'depth', job: '501', millimetres: 1 });
    // A third of the sheet's 3 mm takes a ninth of its 24 h.
    expect(shift.due('501', 'through')).toBe('10:40');
  });

  it('can be said with any start, and again with another figure', () => {
    for (const kind of ['paste', 'closed', 'cure'] as const) {
      const shift = damp();
      shift.enters('tomek', '08:00', { kind, job: '501', card: 'S1', depth: 4 });
      expect(shift.outlook('501').cure.depthMillimetres).toBe(4);
      shift.enters('tomek', '08:05', { kind: 'depth', job: '501', millimetres: 5.5 });
      expect(shift.outlook('501').cure.depthMillimetres).toBe(5.5);
      shift.enters('tomek', '08:06', { kind: 'undo' });
      expect(shift.outlook('501').cure.depthMillimetres).toBe(4);
    }
  });

  it('can be said when the bead that was begun is tooled', () => {
    const shift = damp();
    shift.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'S1' });
    shift.enters('tomek', '08:10', { kind: 'closed', job: '501', depth: 4 });
    expect(shift.outlook('501').cure).toMatchObject({ depthMillimetres: 4, ref: { run: 1 } });
    const other = damp();
    other.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'S1' });
    other.enters('tomek', '08:10', { kind: 'cure', job: '501', card: 'S1', depth: 4 });
    expect(other.outlook('501').cure).toMatchObject({ depthMillimetres: 4, ref: { run: 1 } });
  });

  it('said twice alike writes nothing', () => {
    const shift = damp();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'S1', depth: 3 });
    expect(shift.says('wren', '08:01', { kind: 'depth', job: '501', millimetres: 3 })).toMatchObject({ ok: true, facts: [], notes: [{ note: 'already-so' }] });
  });

  it('finds the bead among everything that runs on the car', () => {
    const shift = damp();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '501', joint: 'j2', card: 'S1' });
    shift.enters('tomek', '08:01', { kind: 'cure', job: '501', joint: 'j2', card: 'P1' });
    shift.enters('tomek', '08:02', { kind: 'cure', job: '501', joint: 'j3', card: 'P1' });
    expect(shift.says('tomek', '08:05', { kind: 'depth', job: '501', millimetres: 3 })).toMatchObject({ ok: true, about: { cure: { joint: 'j2', card: 'S1' } } });
    shift.enters('tomek', '08:06', { kind: 'cure', job: '501', joint: 'j4', card: 'S1' });
    expect(shift.says('tomek', '08:07', { kind: 'depth', job: '501', millimetres: 3 })).toMatchObject({ refusal: { code: 'which-joint', choices: [{ line: 'depth 501 j2 3 mm' }, { line: 'depth 501 j4 3 mm' }] } });
  });

  it.each<[string, (shift: Shift) => Decision]>([
    ['no-depth', (shift) => (shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1' }), shift.says('tomek', '08:01', { kind: 'depth', job: '501', millimetres: 3 }))],
    ['no-depth', (shift) => shift.says('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1', depth: 3 })],
    ['no-depth', (shift) => shift.says('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1', depth: 3 })],
    ['no-depth', (shift) => (shift.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1' }), shift.says('tomek', '08:01', { kind: 'closed', job: '501', depth: 3 }))],
    ['odd-depth', (shift) => shift.says('tomek', '08:00', { kind: 'cure', job: '501', card: 'S1', depth: 31 })],
    ['odd-depth', (shift) => (shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'S1' }), shift.says('tomek', '08:01', { kind: 'depth', job: '501', millimetres: 0.4 }))],
  ])('%s changes nothing', (expected, said) => {
    const shift = damp();
    const decision = said(shift);
    expect(code(decision)).toBe(expected);
    expect(shift.facts.some(({ fact }) => fact.type === 'depth')).toBe(false);
  });
});

describe('the build-up of the metal', () => {
  it('is noted for the joint, and changes no time that counts', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1' });
    const due = shift.due('501', 'handling');
    shift.enters('tomek', '08:01', { kind: 'build-up', job: '501', buildUp: 'thin-skin' });
    expect([shift.outlook('501').cure.buildUp, shift.due('501', 'handling')]).toEqual(['thin-skin', due]);
    expect(shift.says('tomek', '08:02', { kind: 'build-up', job: '501', buildUp: 'thin-skin' })).toMatchObject({ ok: true, facts: [] });
  });
});
