import { describe, expect, it } from 'vitest';
import { outlooksOf } from '../../../../src/repair/book.js';
import { waitingList } from '../../../../src/repair/waiting.js';
import { composeBundle } from '../../../../src/reply/compose/lists.js';
import { composeWhen } from '../../../../src/reply/compose/questions.js';
import { composeWhy } from '../../../../src/reply/compose/why.js';
import { toText } from '../../../../src/reply/to-text.js';
import { on } from '../../../support/joint.js';
import { Shift, warm } from '../../../support/shift.js';
import { hears } from '../../../support/spoken.js';

// P1 (example card): 60 min of open time at 18 °C. Air 18 °C at 70 %: dew point 12.4 °C, so metal of 13 °C is damp.

const setting = (shift: Shift, at: string) => ({ shop: shift.shop, now: on(at) });
const when = (shift: Shift, at: string): string => toText(composeWhen(shift.outlook('501'), setting(shift, at)));
const why = (shift: Shift, at: string): string => toText(composeWhy(shift.outlook('501'), setting(shift, at)));

function pasted(metal: number | null = null): Shift {
  const shift = new Shift();
  shift.enters('tomek', 'Tue 08:00', { kind: 'air', value: warm(18), humidity: 70 });
  shift.enters('tomek', 'Tue 08:00', { kind: 'paste', job: '501', card: 'P1' });
  if (metal !== null) shift.enters('tomek', 'Tue 08:05', { kind: 'read', job: '501', value: warm(metal) });
  return shift;
}

const DAMP = /^HOLD: metal 0\.6 °C above the dew point of 12\.4 °C, 3 °C needed\. The foreman decides\.$/m;

describe('damp metal', () => {
  it('is said by `when` and `why` while the panel is open', () => {
    expect(when(pasted(13), 'Tue 08:10')).toMatch(DAMP);
    expect(when(pasted(13), 'Tue 08:10')).toContain('Close the panel by 09:00');
    expect(why(pasted(13), 'Tue 08:10')).toMatch(DAMP);
    for (const said of [when(pasted(17), 'Tue 08:10'), why(pasted(17), 'Tue 08:10')]) expect(said).not.toContain('HOLD');
  });

  it('is said once the panel is closed, beside the sum', () => {
    const shift = pasted(13);
    shift.enters('tomek', 'Tue 08:20', { kind: 'closed', job: '501' });
    expect(when(shift, 'Tue 08:30')).toMatch(/HELD, metal too close to the dew point/);
    expect(why(shift, 'Tue 08:30').split('\n')[0]).toMatch(/^501 handling strength HELD, metal too close to the dew point, the foreman decides; card P1/);
    shift.enters('ines', 'Tue 08:40', { kind: 'release', job: '501' });
    expect(why(shift, 'Tue 08:41')).not.toContain('HELD');
  });
});

describe('a passed open limit', () => {
  it('is no time to close the panel by', () => {
    const shift = pasted();
    expect(when(shift, 'Tue 08:59')).toContain('Close the panel by 09:00');
    expect(why(shift, 'Tue 08:59')).not.toContain('HOLD');
    for (const said of [when(shift, 'Tue 09:00'), why(shift, 'Tue 09:26')]) {
      expect(said).toContain('HOLD: open limit 09:00 passed (60 min at 18 °C), the foreman decides.');
      expect(said).not.toContain('Close the panel by');
    }
    shift.enters('ines', 'Tue 09:30', { kind: 'release', job: '501' });
    expect(when(shift, 'Tue 09:31')).toContain('Open limit 09:00 passed (60 min at 18 °C), decided by the foreman.');
    expect(why(shift, 'Tue 09:31')).not.toContain('HOLD');
  });
});

describe('a bundle', () => {
  const bundle = (shift: Shift, bell: 'opening' | 'closing', at: string): string => {
    const outlooks = shift.jobs().flatMap((no) => outlooksOf(shift.job(no), shift.shop, shift.air()));
    const made = composeBundle({ bell, at: on(at) }, waitingList(outlooks, on(at)), null, setting(shift, at));
    return made === null ? '' : (toText(made.answer).split('\n')[0] ?? '');
  };

  it('counts what is held for the foreman apart from the checks that are due', () => {
    const shift = pasted(13);
    shift.enters('tomek', 'Tue 08:20', { kind: 'closed', job: '501' });
    shift.enters('tomek', 'Tue 08:30', { kind: 'cure', job: '502', card: 'P1' });
    expect(bundle(shift, 'closing', 'Tue 17:00')).toBe('Closing. 1 check due, 1 held, 0 asleep, 0 due before opening.');
    expect(bundle(shift, 'opening', 'Wed 07:30')).toBe('Opening. 1 check due, 1 held, 0 asleep, 0 running.');
  });

  it('does not count a passed open limit as a check', () => {
    expect(bundle(pasted(), 'closing', 'Tue 17:00')).toBe('Closing. 0 checks due, 1 held, 0 asleep, 0 due before opening.');
  });
});

describe('a pad on a card of lamp settings', () => {
  it('is no reason to stay', () => {
    const shift = new Shift();
    hears(shift, 'tomek', 'Tue 08:00', { kind: 'cure', job: '503', card: 'P2', setting: warm(35), heater: 'pad' });
    const up = hears(shift, 'tomek', 'Tue 08:05', { kind: 'lamp', job: '503' });
    expect(up.lines).toContain('A pad runs no recipe: nothing of it counts.');
    expect(up.buttons.join()).not.toContain('stay');
    expect(up.lines.join()).not.toContain('closes');
  });
});
