import { describe, expect, it } from 'vitest';
import { latestStart } from '../../../../src/repair/latest-start.js';
import type { Answer } from '../../../../src/reply/answer.js';
import { composeLatestStart, composeLatestStartRefusal } from '../../../../src/reply/compose/latest-start.js';
import { toText } from '../../../../src/reply/to-text.js';
import { CARDS } from '../../../support/card-shelf.js';
import { on } from '../../../support/joint.js';
import { latestStartCommand } from '../../../support/questions.js';
import { Shift } from '../../../support/shift.js';

// Example cards (invented figures) in the example shop.

function asked(when: string, change: Parameters<typeof latestStartCommand>[0], shift = new Shift()): Answer {
  const result = latestStart(latestStartCommand(change), shift.situation('tomek', on(when)));
  const setting = { shop: shift.shop, now: on(when) };
  return result.ok ? composeLatestStart(result.plan, setting) : composeLatestStartRefusal(result.refusal, setting);
}

const said = (...question: Parameters<typeof asked>): string[] => toText(asked(...question)).split('\n');
const FRIDAY = on('Fri 16:00');

describe('the answer to latest start', () => {
  it('names the latest minute of all first, then every other heat', () => {
    expect(said('Tue 08:00', { card: 'P1', readyBy: FRIDAY })).toEqual([
      '501 P1 plan, nothing is stored: full strength by Fri 16:00 if closed by Fri 14:20 with lamp 65 °C.',
      'Lamp 40 °C: close by Fri 07:44.',
      'Lamp 30 °C: close by Wed 16:10.',
      "Air only: close by Tue 08:30, if each morning's air reads 20 °C.",
      'If it gets there: take a reading within 20 min. No lamp runs alone: off at closing.',
      'P1 is an example card, not your data sheet.',
    ]);
  });

  it('says each time with its day where another day is said, and that the day is a holiday of the shop', () => {
    const shift = new Shift({ holidays: ['2026-03-06'] });
    const lines = said('Tue 08:00', { card: 'P1', readyBy: FRIDAY }, shift);
    expect(lines.filter((one) => /close by|closed by/.test(one)).every((one) => (one.match(/\d\d:\d\d/g) ?? []).length === (one.match(/[A-Z][a-z]{2} \d\d:\d\d/g) ?? []).length)).toBe(true);
    expect(lines).toContain('Fri 6 Mar is a holiday of this shop: closed that day.');
    expect(said('Tue 08:00', { card: 'P1', readyBy: FRIDAY }).join(' ')).not.toContain('holiday');
  });

  it('says what is too late, and when it would be due if closed now', () => {
    expect(said('Fri 15:30', { card: 'F1', readyBy: FRIDAY })).toEqual([
      // 20 of 420 min, then 45 × 0.952 = 42.9 min.
      '501 F1: too late for sanding time by Fri 16:00. Closed now with lamp 60 °C it is due Fri 16:33.',
      'Lamp 30 °C: too late (Fri 12:20); closed now due Mon 10:00.',
      "Air only: too late (Fri 09:00); closed now due Mon 13:00, if each morning's air reads 20 °C.",
      'If it gets there: take a reading within 20 min. No lamp runs alone: off at closing.',
      'F1 is an example card, not your data sheet.',
    ]);
  });

  it('names the opening at which it can be closed at the earliest', () => {
    expect(said('Sat 09:00', { card: 'E1', readyBy: on('Sat 12:00') })[0]).toBe('501 E1: too late for recoat time by Sat 12:00. Closed Mon 07:30 it is due Mon 08:00.');
  });

  it('is a refusal for a time that is past, with the next best', () => {
    const answer = asked('Fri 15:30', { card: 'T1', readyBy: on('Fri 12:00') });
    expect([answer.tone, toText(answer).split('\n')[0]]).toEqual(['refusal', '501 T1: 12:00 is past. Closed now with lamp 50 °C it is due 15:54.']);
  });

  it('says what is missing where the sheet gives no time', () => {
    expect(said('Tue 08:00', { card: 'S1', readyBy: FRIDAY })[0]).toBe('501 S1: no sheet time for through-cure time: say how deep the bead is, like `3 mm`.');
    expect(said('Tue 08:00', { card: 'S1', readyBy: FRIDAY, depth: 3 })[0]).toBe('501 S1: no sheet time for through-cure time: type the air with humidity, like `air 20 rh 50`.');
  });

  it('names a recipe by its settings, and the checks between them', () => {
    expect(said('Tue 08:00', { card: 'P2', readyBy: FRIDAY })).toEqual([
      '501 P2 plan, nothing is stored: full strength by Fri 16:00 if closed by Fri 12:20 with lamp 35 °C then 55 °C.',
      'Air only: no sheet time.',
      'Check before each next stage. No lamp runs alone: off at closing.',
      'P2 is an example card, not your data sheet.',
    ]);
  });

  it('says what a card states where it does not state what was asked', () => {
    expect(said('Tue 08:00', { card: 'P1', milestone: 'sand', readyBy: FRIDAY })).toEqual(['P1 has no sheet time for sanding time. It states: handling strength, full strength.', 'P1 is an example card, not your data sheet.']);
    expect(said('Tue 08:00', { readyBy: FRIDAY })[0]).toMatch(/^501: which material card\?/);
  });

  it.each(CARDS.map((card) => card.name))('fits a phone, card %s', (card) => {
    for (const [when, by] of [['Tue 08:00', 'Fri 16:00'], ['Fri 15:30', 'Fri 16:00'], ['Fri 15:30', 'Fri 12:00']] as const) {
      const lines = said(when, { card, readyBy: on(by) });
      expect(lines.length).toBeLessThanOrEqual(6);
      expect(lines[0]).toMatch(new RegExp(`^501 ${card}(?: plan, nothing is stored)?: `));
      expect(lines.at(-1)).toBe(`${card} is an example card, not your data sheet.`);
    }
  });
});
