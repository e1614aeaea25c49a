import { describe, expect, it } from 'vitest';
import type { MaterialCard } from '../../../src/cure/card.js';
import { instant, type Instant } from '../../../src/cure/units.js';
import { outlooksOf } from '../../../src/repair/book.js';
import type { Fact, FactRecord } from '../../../src/repair/facts.js';
import { entryNo, FIRST_JOINT, jobNo, lampName, personId } from '../../../src/repair/ids.js';
import { foldJob } from '../../../src/repair/job.js';
import type { Outlook } from '../../../src/repair/outlook.js';
import { composeWhy } from '../../../src/reply/compose/why.js';
import { toText } from '../../../src/reply/to-text.js';
import { cardNamed } from '../../support/card-shelf.js';
import { exampleShop } from '../../support/example-shop.js';
import { on } from '../../support/joint.js';
import { Shift, warm } from '../../support/shift.js';

const SHOP = exampleShop();

/** A cure that was closed at a moment, and nothing else. */
function cureOf(card: string, start: Instant, change: Partial<MaterialCard> = {}): Outlook {
  const cure = { joint: FIRST_JOINT, card, run: 1 };
  const by = personId('ines');
  const facts: readonly Fact[] = [{ type: 'cure-opened', cure, card: { ...cardNamed(card), ...change }, owner: by }, { type: 'closed', cure }];
  const records = facts.map((fact): FactRecord => ({ entry: entryNo(1), job: jobNo('505'), happenedAt: start, enteredAt: start, by, fact }));
  const [outlook] = outlooksOf(foldJob(jobNo('505'), records), SHOP, []);
  if (outlook === undefined) throw new Error('no cure');
  return outlook;
}

const why = (shift: Shift, job: string, at: string): string[] => toText(composeWhy(shift.outlook(job), { shop: shift.shop, now: on(at) })).split('\n');

/** 501 with P1 under a lamp of 60 °C since 08:10. */
function underLamp(): Shift {
  const shift = new Shift();
  shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1' });
  shift.enters('tomek', '08:10', { kind: 'lamp', job: '501', setting: warm(60), lamp: lampName('A') });
  return shift;
}

/** 502 with K: 60 min at 30 °C and 90 at 60 °C, after three hours in air. */
function byRecipe(): Shift {
  const shift = new Shift();
  shift.enters('tomek', '08:00', { kind: 'cure', job: '502', card: 'K' });
  shift.enters('tomek', '11:00', { kind: 'lamp', job: '502', setting: warm(30) });
  shift.enters('tomek', '12:05', { kind: 'check', job: '502', milestone: 'handling', result: 'hard' });
  shift.enters('tomek', '12:06', { kind: 'lamp', job: '502', setting: warm(60) });
  return shift;
}

describe('`why` about a sum of rows', () => {
  it('names card, version and rule, every stretch, the likely time, and what is announced', () => {
    const shift = underLamp();
    shift.enters('tomek', '08:20:20', { kind: 'read', job: '501', value: warm(40) });
    shift.enters('tomek', '08:40:20', { kind: 'read', job: '501', value: warm(52) });
    expect(why(shift, '501', '08:45:30')).toEqual([
      '501 handling strength, card P1 (example 1), from 08:00. Rule: minutes / row minutes at each temperature, added up.',
      '08:00-08:20:20 usual air 20 °C: 20.3 of 300 min = 6.8 %',
      '08:20:20-08:40:20 colder of two readings 40 °C: 20 of 75 min = 26.7 %',
      '08:40:20-08:45 reading 52 °C: 4.7 of 44.3 min = 10.5 %',
      // 100 - 20.333 / 300 - 26.667 - 4.667 / 44.3 % of 44.3 min.
      'if it stays so: 08:45-09:09:47 reading 52 °C: 24.8 of 44.3 min = 56 %',
      'Sum would reach 100 % at 09:10, rounded up.',
      expect.stringMatching(/^Likely 09:0\d \(temperatures as they most likely are\); announced is 09:10\. P1 is an example card, not your data sheet\.$/),
    ]);
  });

  it('prints as many digits as the minute needs', () => {
    const shift = underLamp();
    // 30.02 min in air and 134.99 min at 30 °C end half a second after 10:45: a tenth of a minute would lose it.
    shift.enters('tomek', '08:00', { kind: 'cure', job: '503', card: 'P1' });
    shift.enters('tomek', '08:30:01', { kind: 'read', job: '503', value: warm(30) });
    const lines = why(shift, '503', '09:00');
    expect(lines).toContain('08:00-08:30:01 usual air 20 °C: 30.02 of 300 min = 10 %');
    expect(lines).toContain('if it stays so: 09:00-10:45 reading 30 °C: 105.01 of 150 min = 70 %');
    expect(lines).toContain('Sum would reach 100 % at 10:46, rounded up.');
  });

  it('says that the rows have the margin of the card', () => {
    const outlook = cureOf('P1', on('08:00'), { marginPercent: 25 });
    const lines = toText(composeWhy(outlook, { shop: SHOP, now: on('08:30') })).split('\n');
    expect(lines[1]).toBe("Rule: minutes / row minutes at each temperature, added up; rows with the card's 25 % margin.");
    expect(lines[2]).toBe('08:00-08:30 usual air 20 °C: 30 of 375 min = 8 %');
  });

  it('shows the night as asleep', () => {
    const shift = new Shift();
    shift.enters('ines', 'Tue 15:20', { kind: 'cure', job: '7214', card: 'P1' });
    expect(why(shift, '7214', 'Wed 07:30').slice(2, -1)).toEqual([
      'Tue 15:20-Tue 17:00 usual air 20 °C: 100 of 300 min = 33.3 %',
      'Tue 17:00-… night setting 12 °C: asleep, too cold, nothing counts',
      'Handling strength asleep, too cold (needs 15 °C), 33 % of the wait.',
    ]);
  });

  it('says nothing likely of a joint that was read over the maximum, nor of one that is due', () => {
    const shift = underLamp();
    shift.enters('tomek', '08:20', { kind: 'read', job: '501', value: warm(88) });
    expect(why(shift, '501', '08:25').join('\n')).toMatch(/over the maximum: nothing counts/);
    expect(why(shift, '501', '08:25').join('\n')).not.toMatch(/^Likely/m);
    const due = underLamp();
    expect(why(due, '501', '13:30').join('\n')).toMatch(/reached 100 %/);
    expect(why(due, '501', '13:30').join('\n')).not.toMatch(/^Likely/m);
  });

  it('tells who counts on over a change of clocks', () => {
    // London's clocks went forward on Sunday, 29 March 2026, at 01:00.
    const start = instant(Date.parse('2026-03-29T00:40:00Z'));
    const outlook = cureOf('E1', start);
    expect(toText(composeWhy(outlook, { shop: SHOP, now: start })).split('\n')).toContain('On the way the clocks go forward 60 min: the lines count real minutes.');
    expect(toText(composeWhy(cureOf('E1', on('08:00')), { shop: SHOP, now: on('08:00') }))).not.toContain('clocks');
  });
});

describe('`why` on a phone', () => {
  /** Lines below the head that belong to the sum. */
  const summed = (lines: readonly string[]): number => lines.filter((line) => /^(?:if it stays so: )?(?:\w{3} )?\d\d:\d\d\S*-|^Sum /.test(line)).length;

  it.each([
    ['P1', 'Tue 08:00', 'Tue 08:30'],
    ['K', '08:00', '08:20'],
    ['E1', '16:00', '16:10'],
    ['S1', '15:20', '15:30'],
  ] as const)('takes six lines besides the head, or as many as the sum itself has: card %s closed %s', (card, closed, at) => {
    const shift = new Shift();
    shift.enters('ines', closed, { kind: 'air', value: warm(20), humidity: 50 });
    shift.enters('ines', closed, { kind: 'cure', job: '507', card, ...(card === 'S1' ? { depth: 3 } : {}) });
    const lines = why(shift, '507', at);
    expect(lines.length - 1).toBeLessThanOrEqual(Math.max(6, summed(lines) + 1));
    expect(lines.join(' ')).toContain('Rule: ');
    expect(lines.at(-1)).toMatch(new RegExp(`${card} is an example card, not your data sheet\\.$`));
  });

  it('has room for the change of clocks on the line of the other notes', () => {
    const shift = new Shift();
    const lines = toText(composeWhy(cureOf('S1', instant(Date.parse('2026-03-28T16:00:00Z'))), { shop: shift.shop, now: instant(Date.parse('2026-03-28T16:00:00Z')) })).split('\n');
    expect(lines.length - 1).toBeLessThanOrEqual(Math.max(6, summed(lines) + 1));
  });
});

describe('`why` about other rules', () => {
  it('shows a recipe with what was before and between its stages, and what the sheet\'s own law makes of it', () => {
    expect(why(byRecipe(), '502', '12:10')).toEqual([
      '502 full strength, card K (example 1), from 08:00. Rule: lamp minutes from switch-on, 20 more for each interruption.',
      '08:00-11:00 lamp off: nothing counts',
      '11:00-12:00 lamp 30 °C: 60 of 150 min = 40 %',
      '12:00-12:06 between stages: nothing counts',
      '12:06-12:10 lamp 60 °C: 4 of 150 min = 2.7 %',
      'if it stays so: 12:10-13:36 lamp 60 °C: 86 of 150 min = 57.3 %',
      'Sum would reach 100 % at 13:36, rounded up.',
      "By the sheet's own law (69 kJ/mol) likely 13:30; never announced on it. K is an example card, not your data sheet.",
    ]);
  });

  it.each([
    ['C1', /only minutes at 60 °C or more, read on the metal, after 12 min flash-off\./, 'dwell'],
    ['S1', /24 h for 3 mm, twice the depth takes four times as long\. Drier air takes longer\./, 'through'],
    ['G1', /worst row of the sheet's table/, 'drive-away'],
    ['W1', /only real minutes at 15 °C or more\./, 'drip-free'],
    ['E1', /Rule: real minutes\./, 'recoat-from'],
  ] as const)('names the rule of %s', (card, rule, kind) => {
    const shift = new Shift();
    shift.enters('ines', '09:00', { kind: 'cure', job: '506', card });
    const outlook = shift.outlook('506');
    const only = { ...outlook, milestones: outlook.milestones.filter((one) => one.kind === kind) };
    expect(toText(composeWhy(only, { shop: shift.shop, now: on('09:05') }))).toMatch(rule);
  });

  it.each([
    ['P1', {}, /unknown air: nothing counts/],
    ['C1', {}, /09:12-… metal not read: nothing counts/],
    ['S1', {}, /depth not known: nothing counts/],
    ['G1', {}, /unknown air: nothing counts/],
    ['S1', { depth: 3 }, /unknown air: nothing counts/],
  ] as const)('says why nothing counts of %s in a shop whose air nobody knows (%j)', (card, more, words) => {
    const shift = new Shift({ air: null, night: null });
    shift.enters('ines', '09:00', { kind: 'cure', job: '507', card, ...more });
    const outlook = shift.outlook('507');
    const last = { ...outlook, milestones: outlook.milestones.slice(-1) };
    expect(toText(composeWhy(last, { shop: shift.shop, now: on('09:30') }))).toMatch(words);
  });
});
