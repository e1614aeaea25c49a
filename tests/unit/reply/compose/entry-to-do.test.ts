import { describe, expect, it } from 'vitest';
import { hears } from '../../../support/spoken.js';
import { Shift, warm } from '../../../support/shift.js';

const BACK = 'Lamp back? Tap On, then take a reading.';

/** Warm at once: handling at 08:25, full strength at 09:20. */
function warmed(): Shift {
  const shift = new Shift();
  shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1', setting: warm(65) });
  shift.enters('tomek', '08:00', { kind: 'read', job: '501', value: warm(65) });
  return shift;
}

describe('a lamp that is off', () => {
  it('is asked for again while a wait runs', () => {
    expect(hears(warmed(), 'tomek', '08:10', { kind: 'off', job: '501' }).lines).toContain(BACK);
  });

  it('is asked for again while a later wait runs and an earlier one is due', () => {
    expect(hears(warmed(), 'tomek', '08:28', { kind: 'off', job: '501' }).lines).toEqual(expect.arrayContaining(['Handling strength due since 08:25, check it.', BACK]));
  });

  it('is not asked for again once the last wait is due', () => {
    const { lines } = hears(warmed(), 'tomek', '09:30', { kind: 'off', job: '501' });
    expect(lines).toContain('Full strength due since 09:20, check it.');
    expect(lines).not.toContain(BACK);
  });

  it.each([['en', 'Nothing more to wait for on this card.'], ['de', 'Auf dieser Karte gibt es nichts mehr abzuwarten.'], ['es', 'En esta ficha ya no hay nada que esperar.']] as const)('is not asked for again where nothing waits any more (%s)', (language, nothing) => {
    const shift = warmed();
    shift.enters('tomek', '09:30', { kind: 'check', job: '501', milestone: 'full', result: 'hard' });
    const { lines } = hears(shift, 'tomek', '09:31', { kind: 'off', job: '501' }, language);
    expect(lines).toHaveLength(3);
    expect(lines[1]).toBe(nothing);
    expect(lines.join('\n')).not.toMatch(/Tap On|„An“|«Encendida»/);
  });
});
