import { describe, expect, it } from 'vitest';
import { waitingList } from '../../../src/repair/waiting.js';
import { composeWaiting } from '../../../src/reply/compose/lists.js';
import { toText } from '../../../src/reply/to-text.js';
import { on } from '../../support/joint.js';
import { hears, postsOf } from '../../support/spoken.js';
import { Shift, warm } from '../../support/shift.js';

const waits = (shift: Shift, when: string): string => toText(composeWaiting(waitingList(shift.outlooks('501'), on(when)), { shop: shift.shop, now: on(when) }));

/** Air 18 °C, 70 %: Magnus with 17.62 and 243.12 °C (WMO-No. 8) gives a dew point of 12.44 °C. */
function damp(): Shift {
  const shift = new Shift();
  shift.enters('tomek', '07:45', { kind: 'air', value: warm(18), humidity: 70 });
  return shift;
}

describe('air typed in another unit than the shop reads', () => {
  it.each([
    ['C', warm(68, 'F'), 'Air 68 °F = 20 °C noted 07:45.'],
    ['F', warm(20, 'C'), 'Air 20 °C = 68 °F noted 07:45.'],
    ['C', warm(20, 'C'), 'Air 20 °C noted 07:45.'],
    ['F', warm(68), 'Air 68 °F noted 07:45.'],
  ] as const)('is said in both, shop in °%s', (unit, value, said) => {
    expect(hears(new Shift({ unit }), 'tomek', '07:45', { kind: 'air', value, humidity: null }).lines[0]).toBe(said);
  });
});

describe('air with its humidity', () => {
  it('says how warm metal has to be', () => {
    expect(hears(new Shift(), 'tomek', '07:45', { kind: 'air', value: warm(18), humidity: 70 }).lines.slice(0, 2)).toEqual(['Air 18 °C, 70 % humidity noted 07:45.', 'Dew point 12.4 °C: metal at least 15.5 °C.']);
    expect(hears(new Shift(), 'tomek', '07:45', { kind: 'air', value: warm(18), humidity: null }).lines.join('\n')).not.toContain('oint');
  });

  it('says so in the shop\'s unit, rounded up', () => {
    expect(hears(new Shift({ unit: 'F' }), 'tomek', '07:45', { kind: 'air', value: warm(18, 'C'), humidity: 70 }).lines[1]).toBe('Dew point 54.4 °F: metal at least 59.8 °F.');
  });

  it('below zero it is frost', () => {
    expect(hears(new Shift(), 'tomek', '07:45', { kind: 'air', value: warm(4), humidity: 60 }).lines[1]).toBe('Frost point -2.7 °C: moisture settles as frost, which nobody can wipe dry. Warm the metal first.');
  });

  it('that makes metal too damp is said for the car it holds', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1' });
    shift.enters('tomek', '08:05', { kind: 'read', job: '501', value: warm(15) });
    expect(hears(shift, 'tomek', '08:10', { kind: 'air', value: warm(18), humidity: 70 }).lines).toContain('501 HOLD: metal 2.6 °C above the dew point of 12.4 °C, 3 °C needed. The foreman decides.');
  });
});

describe('paste on metal', () => {
  it('is answered with the least temperature of the metal where the humidity is known', () => {
    const shift = damp();
    expect(hears(shift, 'tomek', '08:00', { kind: 'paste', job: '501', card: 'P1' }).lines).toContain('Dew point 12.4 °C: metal at least 15.5 °C.');
    expect(hears(shift, 'tomek', '08:05', { kind: 'read', job: '501', value: warm(19) }).lines).toContain('Metal 6.6 °C above the dew point of 12.4 °C.');
  });

  it('too close to the dew point is a hold, in the answer, in the list and to the foreman', () => {
    const shift = damp();
    shift.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1' });
    const { lines, buttons } = hears(shift, 'tomek', '08:05', { kind: 'read', job: '501', value: warm(15) });
    expect(lines.slice(0, 3)).toEqual(['501 reading 15 °C.', 'Close the panel by 09:00 (60 min at 18 °C).', 'HOLD: metal 2.6 °C above the dew point of 12.4 °C, 3 °C needed. The foreman decides.']);
    expect(buttons).toEqual(['Undo: undo 3']);
    expect(waits(shift, '08:06')).toContain('501 close the panel by 09:00, HELD, metal too close to the dew point');
    expect(waitingList(shift.outlooks('501'), on('08:06')).map(({ state, waitsFor, dueAt }) => [state, waitsFor, dueAt])).toEqual([['held', 'open-limit', on('09:00')]]);
    shift.enters('tomek', '08:10', { kind: 'closed', job: '501' });
    expect(waits(shift, '08:11')).toContain('501 HELD, metal too close to the dew point, foreman decides (since 08:05)');
    expect(postsOf(shift, 'decision')).toEqual([{
      lines: ['501 metal 2.6 °C above the dew point of 12.4 °C, 3 °C needed. You decide.', 'A bead on damp metal may not hold. Wiped off and warmed: undo or scrap it and paste again.', 'P1 is an example card, not your data sheet.'],
      buttons: ['Go on: release 501 j1 …', 'Scrap: scrap 501 j1 foreman'],
    }]);
    expect(hears(shift, 'tomek', '08:12', { kind: 'check', job: '501', result: 'hard' }).lines).toEqual(['501 HELD, metal too close to the dew point: the foreman decides.']);
    expect(hears(shift, 'ines', '08:13', { kind: 'release', job: '501' }).lines.slice(0, 2)).toEqual(['501 goes on, decided by Ines.', 'Handling strength 15:40 by the clock.']);
  });

  it('colder than the dew point says so', () => {
    const shift = damp();
    shift.enters('tomek', '08:00', { kind: 'paste', job: '501', card: 'P1' });
    expect(hears(shift, 'tomek', '08:05', { kind: 'read', job: '501', value: warm(10) }).lines[2]).toBe('HOLD: metal 2.4 °C below the dew point of 12.4 °C, 3 °C needed. The foreman decides.');
  });
});

describe('the flash-off', () => {
  it('is looked at, and then the heat comes', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'C1' });
    shift.until('08:12');
    expect(postsOf(shift, 'flash-off').map(({ lines }) => lines.slice(0, 2))).toEqual([['501 flash-off time due 08:12 by the clock.', 'Does it look matt all over?']]);
    expect(hears(shift, 'tomek', '08:13', { kind: 'check', job: '501', result: 'hard' }).lines).toEqual(['501 flash-off time confirmed 08:13 by Tomek.', 'Metal time waits for a metal reading, 0 % of the wait.', 'Now the heat: only metal that was read counts.', 'C1 is an example card, not your data sheet.']);
  });
});
