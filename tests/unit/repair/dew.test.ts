import { describe, expect, it } from 'vitest';
import { said } from '../../support/joint.js';
import { Shift, warm } from '../../support/shift.js';

/** Air 18 °C, 70 %: dew point 12.44 °C. P1 pasted at 08:00, open for an hour. */
function damp(air: { readonly at: string; readonly humidity: number | null } = { at: '07:45', humidity: 70 }): Shift {
  const shift = new Shift();
  shift.enters('tomek', air.at, { kind: 'air', value: warm(18), humidity: air.humidity });
  shift.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1' });
  return shift;
}

function read(shift: Shift, at: string, value: number): Shift {
  shift.enters('tomek', at, { kind: 'read', job: '501', value: warm(value) });
  return shift;
}

const held = (shift: Shift): string => said(shift.outlook('501').dew?.heldSince ?? null);

describe('metal against the dew point, from the first paste to the closed panel', () => {
  it.each<[string, () => Shift, string]>([
    ['three degrees and more above it are enough', () => read(damp(), '08:05', 15.5), 'never'],
    ['less is a hold', () => read(damp(), '08:05', 15), '08:05'],
    ['below it even more so', () => read(damp(), '08:05', 9), '08:05'],
    ['a warmer reading later lifts nothing: the bead lies on it', () => read(read(damp(), '08:05', 15), '08:10', 22), '08:05'],
    ['nothing is known without a humidity', () => read(damp({ at: '07:45', humidity: null }), '08:05', 15), 'never'],
    ['three hours old is still known', () => read(damp({ at: '05:00', humidity: 70 }), '08:05', 15), '08:05'],
    ['older is not', () => read(damp({ at: '04:59', humidity: 70 }), '08:05', 15), 'never'],
    ['the last humidity before the paste counts, not a damper one before it', () => {
      const shift = new Shift();
      shift.enters('tomek', '07:30', { kind: 'air', value: warm(18), humidity: 90 });
      shift.enters('tomek', '07:45', { kind: 'air', value: warm(18), humidity: 40 });
      shift.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1' });
      return read(shift, '08:05', 15);
    }, 'never'],
    ['damper air while the panel is open holds from then on', () => {
      const shift = read(damp({ at: '07:45', humidity: 40 }), '08:05', 15);
      shift.enters('tomek', '08:20', { kind: 'air', value: warm(18), humidity: 70 });
      return shift;
    }, '08:20'],
    ['after closing it says nothing any more', () => {
      const shift = read(damp({ at: '07:45', humidity: 40 }), '08:05', 15);
      shift.enters('tomek', '08:10', { kind: 'closed', job: '501' });
      shift.enters('tomek', '08:20', { kind: 'air', value: warm(18), humidity: 90 });
      return read(shift, '08:25', 12);
    }, 'never'],
    ['a panel that is heated tells nothing of the metal below the bead', () => {
      const shift = damp();
      shift.enters('tomek', '08:02', { kind: 'lamp', job: '501', setting: warm(30) });
      return read(shift, '08:05', 15);
    }, 'never'],
    ['a reading on bare shiny metal does not count', () => {
      const shift = damp();
      shift.enters('tomek', '08:05', { kind: 'read', job: '501', value: warm(5), method: 'bare' });
      return shift;
    }, 'never'],
    ['a reading that is taken back was none', () => {
      const shift = read(damp(), '08:05', 15);
      shift.enters('tomek', '08:06', { kind: 'undo' });
      return shift;
    }, 'never'],
  ])('%s', (_name, shift, since) => {
    expect(held(shift())).toBe(since);
  });
});

describe('the hold', () => {
  it('is asked of the foreman once, stops every check, and ends with the decision', () => {
    const shift = read(damp(), '08:05', 15);
    shift.enters('tomek', '08:10', { kind: 'closed', job: '501' });
    read(shift, '08:12', 65);
    shift.until('08:40');
    expect(shift.heard('decision', 'handling')).toEqual(['08:05 decision ines']);
    expect(shift.says('tomek', '08:41', { kind: 'check', job: '501', result: 'hard' })).toMatchObject({ refusal: { code: 'held', reason: 'dew' } });
    expect(shift.says('tomek', '08:42', { kind: 'release', job: '501' })).toMatchObject({ refusal: { code: 'foreman-only' } });
    shift.enters('ines', '08:43', { kind: 'release', job: '501' });
    shift.until('08:44');
    expect(shift.heard('decision', 'handling')).toEqual(['08:05 decision ines', '08:43 handling tomek']);
  });

  it('comes back for metal that turns out closer than what was decided on, and for nothing less', () => {
    const shift = read(damp(), '08:05', 15);
    shift.enters('ines', '08:06', { kind: 'release', job: '501' });
    read(shift, '08:10', 15.2);
    expect(held(shift)).toBe('never');
    read(shift, '08:15', 14);
    shift.until('08:20');
    expect(held(shift)).toBe('08:15');
    expect(shift.heard('decision')).toEqual(['08:05 decision ines', '08:15 decision ines']);
  });

  it('is asked anew for a new reading after a wrong one was taken back', () => {
    const shift = read(damp(), '08:05', 15);
    shift.enters('tomek', '08:06', { kind: 'undo' });
    read(shift, '08:10', 14);
    shift.until('08:20');
    expect(shift.heard('decision')).toEqual(['08:05 decision ines', '08:10 decision ines']);
  });

  it('can be there together with a passed open limit: two questions, one decision', () => {
    const shift = read(damp(), '08:05', 15);
    shift.enters('tomek', '09:10', { kind: 'closed', job: '501' });
    shift.until('09:20');
    expect(shift.heard('decision')).toEqual(['08:05 decision ines', '09:00 decision ines']);
    shift.enters('ines', '09:21', { kind: 'release', job: '501' });
    expect(shift.plan().filter((one) => one.kind === 'decision')).toEqual([]);
  });

  it('goes with the joint to another card, and the foreman is asked about that one', () => {
    const shift = read(damp(), '08:05', 15);
    shift.enters('ines', '08:06', { kind: 'release', job: '501' });
    shift.enters('tomek', '08:07', { kind: 'wrong-card', job: '501', card: 'P2' });
    shift.until('08:10');
    expect(shift.heard('decision')).toEqual(['08:05 decision ines', '08:07 decision ines']);
  });
});
