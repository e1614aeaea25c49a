import { describe, expect, it } from 'vitest';
import type { Decision } from '../../../src/repair/decision.js';
import { lampName } from '../../../src/repair/ids.js';
import { Shift, warm } from '../../support/shift.js';

const PAD = lampName('1');
const LAMP = lampName('A');
const shop = () => new Shift({ pads: [PAD, lampName('2')], lamps: [LAMP] });

function shiftWith(card: string): Shift {
  const shift = shop();
  shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card });
  return shift;
}

describe('a heating pad', () => {
  it('heats as a lamp does, under its own name', () => {
    const shift = shiftWith('P1');
    shift.enters('tomek', '08:05', { kind: 'lamp', job: '501', setting: warm(60), heater: 'pad', lamp: PAD });
    expect(shift.outlook('501').cure).toMatchObject({ heater: 'pad', lamp: '1' });
    shift.enters('tomek', '08:20', { kind: 'off', lamp: PAD });
    expect(shift.outlook('501').heat.lamp).toBe('off');
  });

  it('runs no recipe, and the note says so', () => {
    const shift = shiftWith('P2');
    expect(shift.says('tomek', '08:05', { kind: 'lamp', job: '501', setting: warm(55), heater: 'pad', lamp: PAD })).toMatchObject({ ok: true, notes: [{ note: 'pad-no-recipe' }] });
    expect(shift.due('501', 'handling')).toBe('never');
    expect(shop().says('tomek', '08:05', { kind: 'cure', job: '502', card: 'P2', setting: warm(55), heater: 'pad' })).toMatchObject({ ok: true, notes: [{ note: 'pad-no-recipe' }] });
  });

  it('is on one job at a time: asked first, then off where it was', () => {
    const shift = shiftWith('P1');
    shift.enters('tomek', '08:05', { kind: 'lamp', job: '501', setting: warm(60), heater: 'pad', lamp: PAD });
    shift.enters('tomek', '08:10', { kind: 'cure', job: '502', card: 'P1' });
    const asked = shift.says('tomek', '08:15', { kind: 'lamp', job: '502', setting: warm(60), heater: 'pad', lamp: PAD });
    expect(asked).toMatchObject({ refusal: { code: 'lamp-elsewhere', heater: 'pad', job: '501', line: 'pad 502 60 pad 1 at 2026-03-02T08:15:00.000Z yes' } });
    shift.enters('tomek', '08:15', { kind: 'lamp', job: '502', setting: warm(60), heater: 'pad', lamp: PAD, yes: true });
    expect([shift.outlook('501').heat.lamp, shift.outlook('502').heat.lamp]).toEqual(['off', 'on']);
  });

  it.each<[string, Decision, object]>([
    ['a pad nobody knows', shiftWith('P1').says('tomek', '08:05', { kind: 'lamp', job: '501', setting: warm(60), heater: 'pad', lamp: lampName('9') }), { code: 'unknown-lamp', heater: 'pad', isOther: false }],
    ['a lamp called a pad', shiftWith('P1').says('tomek', '08:05', { kind: 'lamp', job: '501', setting: warm(60), heater: 'pad', lamp: LAMP }), { code: 'unknown-lamp', heater: 'pad', isOther: true }],
    ['a pad called a lamp', shiftWith('P1').says('tomek', '08:05', { kind: 'lamp', job: '501', setting: warm(60), lamp: PAD }), { code: 'unknown-lamp', heater: 'lamp', isOther: true }],
    // It lies on the panel: the panel's maximum is its own, not the lamp's.
    ['hotter than the panel may be', shiftWith('P1').says('tomek', '08:05', { kind: 'lamp', job: '501', setting: warm(86, 'C'), heater: 'pad', lamp: PAD }), { code: 'over-lamp-maximum', maximum: 85 }],
  ])('%s is refused', (_name, decision, refusal) => {
    expect(decision).toMatchObject({ refusal });
  });
});
