import { describe, expect, it } from 'vitest';
import { whatIf } from '../../../../src/repair/what-if.js';
import type { Answer } from '../../../../src/reply/answer.js';
import { composeWhatIf, composeWhatIfRefusal } from '../../../../src/reply/compose/what-if.js';
import { toText } from '../../../../src/reply/to-text.js';
import { CARDS } from '../../../support/card-shelf.js';
import { on } from '../../../support/joint.js';
import { whatIfCommand } from '../../../support/questions.js';
import { Shift, warm } from '../../../support/shift.js';

// Example cards (invented figures) in the example shop.

function asked(shift: Shift, when: string, change: Parameters<typeof whatIfCommand>[0] = {}): Answer {
  const result = whatIf(whatIfCommand(change), shift.situation('tomek', on(when)));
  const setting = { shop: shift.shop, now: on(when) };
  return result.ok ? composeWhatIf(result.whatIf, setting) : composeWhatIfRefusal(result.refusal, setting);
}

const said = (...question: Parameters<typeof asked>): string[] => toText(asked(...question)).split('\n');

function begun(card: string, change: ConstructorParameters<typeof Shift>[0] = {}, lamp: number | null = null): Shift {
  const shift = new Shift(change);
  shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card, setting: lamp === null ? null : warm(lamp) });
  return shift;
}

describe('the answer to what if', () => {
  it('stands beside the book, and says first that nothing is stored', () => {
    expect(said(begun('P1'), '10:00', { setting: warm(65), from: on('13:00') })).toEqual([
      '501 what if, nothing is stored. As it stands: handling 14:00, full no time yet.',
      'Lamp 65 °C from 13:00: handling 13:24, full 14:31, if a reading shows 65 °C by 13:20.',
      // 260 of 2160, then 220 of 480 min; 220 of 1080 min.
      'Lamp 40 °C: handling 13:30, full no time yet, 57 % of the wait by 17:00, if a reading shows it by 13:20.',
      'Lamp 30 °C: handling 13:40, full no time yet, 32 % of the wait by 17:00, if a reading shows it by 13:20.',
      'No lamp runs alone: after 17:00 it counts only if somebody stays.',
      'P1 is an example card, not your data sheet.',
    ]);
  });

  it('names heat and air together', () => {
    expect(said(begun('P1'), '10:00', { setting: warm(40), air: warm(30) })[1]).toMatch(/^Lamp 40 °C, air 30 °C from 10:00: handling 11:10, full /);
    expect(said(begun('P1'), '10:00', { air: warm(30) })[1]).toMatch(/^Air 30 °C from 10:00: handling 12:00, full /);
  });

  it('says from when on the lamp would be off', () => {
    const shift = begun('P1', {}, 30);
    shift.enters('tomek', '09:20', { kind: 'read', job: '501', value: warm(30) });
    expect(said(shift, '10:00', { unheated: true, from: on('10:20') })[1]).toMatch(/^Air only from 10:20: handling 13:00, full /);
    expect(said(begun('P1'), '10:00', { unheated: true })[1]).toBe('Air only from 10:00: no change.');
  });

  it('names the moment at which the counting ends, not midnight', () => {
    const shift = new Shift();
    shift.enters('tomek', 'Tue 08:00', { kind: 'paste', job: '501', card: 'P1' });
    // Lit before opening: its day ends at midnight, its heat at closing.
    const lines = said(shift, 'Tue 08:00', { setting: warm(30), from: on('Wed 07:00') });
    // 20 of 2160, then 580 of 1080 min.
    expect(lines[1]).toMatch(/full no time yet, 5\d % of the wait by Wed 17:00, if/);
    expect(lines.join('\n')).not.toContain('00:00');
  });

  it('offers to note the heat asked for if it is meant for now', () => {
    expect(asked(begun('P1'), '10:00', { setting: warm(65) }).buttons).toEqual([{ label: 'Lamp 65 °C', line: 'lamp 501 j1 65C' }]);
    expect(asked(begun('P1', { unit: 'F' }), '10:00', { setting: warm(150) }).buttons).toEqual([{ label: 'Lamp 150 °F', line: 'lamp 501 j1 150F' }]);
    expect(asked(begun('P1'), '10:00', { setting: warm(65), heater: 'pad' }).buttons.map((one) => one.line)).toEqual(['pad 501 j1 65C']);
    expect(asked(begun('P1'), '10:00', { setting: warm(65), from: on('13:00') }).buttons).toEqual([]);
    expect(asked(begun('P1'), '16:50', { setting: warm(65) }).buttons).toEqual([]);
    expect(asked(begun('P1'), '10:00').buttons).toEqual([]);
  });

  it('says why heat changes nothing where it comes too late for a reading', () => {
    expect(said(begun('P1'), '16:50', { setting: warm(65) })[1]).toBe('Lamp 65 °C from 16:50: no change, too late for a reading.');
  });

  it('says that a recipe needs its checks', () => {
    expect(said(begun('P2'), '10:00').slice(0, 2)).toEqual(['501 what if, nothing is stored. As it stands: no time yet.', 'Recipe, lamp 35 °C then 55 °C: handling 11:20, full 13:40, each stage after its check.']);
  });

  it('says that it takes an open panel for closed', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'paste', job: '501', card: 'P1' });
    expect(said(shift, '09:10', { from: on('09:30') })[0]).toBe('501 what if, nothing is stored. If closed 09:30: handling 14:30, full no time yet.');
    expect(asked(shift, '09:10', { setting: warm(65) }).buttons).toEqual([]);
  });

  it('says that a cure is held', () => {
    const shift = begun('P1', {}, 65);
    shift.enters('tomek', '09:30', { kind: 'read', job: '501', value: warm(90) });
    expect(said(shift, '10:00')[0]).toContain('HELD, the foreman decides.');
  });

  it('shows the joint without heat', () => {
    const shift = begun('P1', {}, 30);
    shift.enters('tomek', '09:20', { kind: 'read', job: '501', value: warm(30) });
    // 20 of 2160, 40 of 1080, 420 of 2160 min.
    expect(said(shift, '10:00')).toContain('Air only: handling 13:20, full no time yet, 24 % of the wait by 17:00.');
  });

  it.each(CARDS.map((card) => card.name))('fits a phone, card %s', (card) => {
    for (const change of [{}, { setting: warm(60) }, { air: warm(25) }, { setting: warm(60), from: on('15:00') }, { setting: warm(60), air: warm(25) }, { unheated: true, from: on('15:00') }]) {
      const lines = said(begun(card, {}, 55), '10:00', change);
      expect(lines.length).toBeLessThanOrEqual(6);
      expect(lines[0]).toContain('nothing is stored');
      expect(lines.at(-1)).toBe(`${card} is an example card, not your data sheet.`);
    }
  });

  it.each([
    ['P1', { setting: warm(90, 'C') }, '90 °C is over the maximum of P1 (85 °C). Ask for less. Nothing is stored.'],
    ['P2', { setting: warm(30) }, 'Lamp 30 °C counts nothing: the recipe of P2 begins at 35 °C. Nothing is stored.'],
    ['P2', { setting: warm(40), heater: 'pad' as const }, 'A pad runs no lamp recipe, so P2 has no time for it. Ask with a lamp. Nothing is stored.'],
    ['P1', { setting: warm(150) }, "150 what? Over this card's 85 °C. 150 °F = 65.6 °C. Nothing counted yet."],
  ])('refuses what cannot be, card %s', (card, change, words) => {
    const refusal = asked(begun(card), '10:00', change);
    expect([toText(refusal), refusal.tone === 'plain']).toEqual([words, false]);
  });
});
