import { describe, expect, it } from 'vitest';
import { lampName } from '../../../src/repair/ids.js';
import { postsOf } from '../../support/spoken.js';
import { Shift, warm } from '../../support/shift.js';

/** P1 at 65 °C from 08:00: full 09:20, confirmed 09:25. */
function over(): Shift {
  const shift = new Shift();
  shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1', setting: warm(65), lamp: lampName('A') });
  shift.enters('tomek', '08:00', { kind: 'read', job: '501', value: warm(65) });
  shift.enters('tomek', '09:25', { kind: 'check', job: '501', milestone: 'full', result: 'hard' });
  return shift;
}

describe('a lamp that nobody said was off, and nothing waits under it any more', () => {
  it('is asked about once an hour, the third time of the foreman, and says that nothing waits', () => {
    const shift = over();
    shift.until('16:59');
    expect(shift.heard('still-on')).toEqual(['10:25 still-on tomek', '11:25 still-on tomek', '12:25 still-on ines']);
    expect(postsOf(shift, 'still-on')[0]?.lines).toContain('Nothing under it waits any more.');
    expect(postsOf(shift, 'still-on', 'de')[0]?.lines).toContain('Darunter wartet nichts mehr.');
  });

  it('is not once it is off, nor where there was none', () => {
    const shift = over();
    shift.enters('tomek', '09:40', { kind: 'off', job: '501' });
    const warmOnly = new Shift();
    warmOnly.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1' });
    warmOnly.enters('tomek', '08:00', { kind: 'read', job: '501', value: warm(65) });
    warmOnly.enters('tomek', '09:25', { kind: 'check', job: '501', milestone: 'full', result: 'hard' });
    for (const one of [shift, warmOnly]) {
      one.until('16:59');
      expect(one.heard('still-on').filter((post) => post > '09:25')).toEqual([]);
    }
  });
});
