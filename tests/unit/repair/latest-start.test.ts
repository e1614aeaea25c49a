import { describe, expect, it } from 'vitest';
import { latestStart, type LatestStart, type StartChoice } from '../../../src/repair/latest-start.js';
import type { MaterialCard } from '../../../src/cure/card.js';
import { celsius, minutes } from '../../../src/cure/units.js';
import { jobNo } from '../../../src/repair/ids.js';
import { CARDS, cardNamed } from '../../support/card-shelf.js';
import { on, said } from '../../support/joint.js';
import { latestStartCommand } from '../../support/questions.js';
import { Shift, warm } from '../../support/shift.js';

// Example cards (invented figures) in the example shop: open 07:30-17:00 from Monday to Friday, air 20 °C, night 12 °C,
// a reading 20 min after the lamp is lit, 10 min for the check between two stages.

type Change = Parameters<typeof latestStartCommand>[0];

function plan(when: string, change: Change, shift = new Shift(), cards: readonly MaterialCard[] = []): LatestStart {
  const situation = shift.situation('tomek', on(when));
  const result = latestStart(latestStartCommand(change), { ...situation, cards: [...situation.cards, ...cards] });
  if (!result.ok) throw new Error(result.refusal.code);
  return result.plan;
}

function refused(when: string, change: Change, shift = new Shift()): unknown {
  const result = latestStart(latestStartCommand(change), shift.situation('tomek', on(when)));
  return result.ok ? null : result.refusal;
}

const name = ({ heat }: StartChoice): string => (heat.kind === 'heater' ? `lamp ${heat.setting}` : heat.kind);
/** `lamp 65 by Fri 14:20`; late: `(09:00) 09:30 -> Mon 10:00`; `*` for air that is taken for granted each morning. */
const words = (one: StartChoice): string => `${name(one)}${one.eachMorning === null ? '' : '*'} ${one.late === null ? `by ${said(one.latest)}` : `(${said(one.latest)}) ${said(one.late.closed)} -> ${said(one.late.due)}`}`;
const choices = (found: LatestStart): string[] => found.choices.map(words);

describe('the latest start', () => {
  it.each<[card: string, by: string, expected: readonly string[]]>([
    // 20 min at 20 °C are 20/2160; then 80 × 0.9907 = 79.3 min. Lamp 40: 480 × 0.9907 = 475.6 min.
    // Lamp 30: Fri 490 of 1080 min from 07:50, Thu 550, so 40 min more on Wednesday, less what 20 min in the air give: 30 min after the reading.
    // Air: 36 h need readings each morning; 510 min on Friday, 570 a day before: Tuesday's 510 would begin at 08:30.
    ['P1', 'Fri 16:00', ['air* by Tue 08:30', 'lamp 30 by Wed 16:10', 'lamp 40 by Fri 07:44', 'lamp 65 by Fri 14:20']],
    ['F1', 'Fri 16:00', ['air by Fri 09:00', 'lamp 30 by Fri 12:20', 'lamp 60 by Fri 14:57']],
    // 80 + 10 + 130 min; 60 + 10 + 90 min.
    ['P2', 'Fri 16:00', ['air (never) Tue 08:00 -> never', 'recipe by Fri 12:20']],
    ['K', 'Fri 16:00', ['air* (never) Tue 08:00 -> 2026-03-10 08:30', 'recipe by Fri 13:20']],
    // Humidity is not known: only the row that takes any, 480 min.
    ['G1', 'Fri 16:00', ['air by Fri 08:00']],
    // 12 min to flash off run beside the 20 until the reading; then 35 min.
    ['C1', 'Fri 16:00', ['air (never) Tue 08:00 -> never', 'lamp 60 by Fri 15:05']],
    ['E1', 'Fri 16:00', ['air by Fri 15:30']],
  ])('%s by %s', (card, by, expected) => {
    expect(choices(plan('Tue 08:00', { card, readyBy: on(by) }))).toEqual(expected);
  });

  it.each<[card: string, by: string, expected: readonly string[]]>([
    // 130 min do not fit between 07:30 and 09:00: all 220 min on Thursday.
    ['P2', 'Fri 09:00', ['recipe by Thu 13:20']],
    // The first stage ends with Thursday; it is checked until 07:40, then 130 min.
    ['P2', 'Fri 09:50', ['recipe by Thu 15:40']],
    // Turned up one minute before closing, the second stage starts again at 07:30 (more than half of it is missing): 90 min.
    ['K', 'Fri 09:00', ['recipe by Thu 15:49']],
    // Turned up at 07:40.
    ['K', 'Fri 09:10', ['recipe by Thu 16:00']],
  ])('of a recipe over a night: %s by %s', (card, by, expected) => {
    expect(choices(plan('Tue 08:00', { card, readyBy: on(by) })).filter((one) => one.startsWith('recipe'))).toEqual(expected);
  });

  it('is within opening hours where the time is not', () => {
    expect(choices(plan('Tue 08:00', { card: 'E1', readyBy: on('Sun 20:00') }))).toEqual(['air by Fri 16:59']);
  });

  it('closes no panel on a holiday', () => {
    const shift = new Shift({ holidays: ['2026-03-06'] });
    expect(choices(plan('Tue 08:00', { card: 'F1', readyBy: on('Fri 16:00') }, shift))).toEqual(['air by Thu 10:00', 'lamp 30 by Thu 13:20', 'lamp 60 by Thu 15:57']);
  });

  it('counts the air that was read', () => {
    const shift = new Shift();
    shift.enters('tomek', 'Tue 07:40', { kind: 'air', value: warm(30) });
    // 210 min at 30 °C; 20 of them, then 45 × (1 - 20/210) = 40.7 min at 60 °C. Lamp 30 gains nothing.
    expect(choices(plan('Tue 08:00', { card: 'F1', readyBy: on('Tue 16:00') }, shift))).toEqual(['air by Tue 12:30', 'lamp 60 by Tue 14:59']);
  });

  it('needs depth and humidity for a bead', () => {
    const shift = new Shift();
    expect(choices(plan('Tue 08:00', { card: 'S1', readyBy: on('Tue 16:00') }, shift))).toEqual(['air (never) Tue 08:00 -> never']);
    shift.enters('tomek', 'Tue 07:40', { kind: 'air', value: warm(20), humidity: 50 });
    expect(choices(plan('Tue 08:00', { card: 'S1', readyBy: on('Tue 16:00') }, shift))).toEqual(['air (never) Tue 08:00 -> never']);
    // 24 h × (1.5 / 3)² = 6 h.
    expect(choices(plan('Tue 08:00', { card: 'S1', readyBy: on('Tue 16:00'), depth: 1.5 }, shift))).toEqual(['air by Tue 10:00']);
  });

  it('of one milestone where it is named, else of the last on the card', () => {
    expect(choices(plan('Tue 08:00', { card: 'P1', milestone: 'handling', readyBy: on('Fri 16:00') }))[0]).toBe('air by Fri 11:00');
    expect(plan('Tue 08:00', { card: 'P1', readyBy: on('Fri 16:00') }).milestone).toBe('full');
  });
});

describe('a start that is late', () => {
  it('says when it would be due if it were closed now', () => {
    // 67 of 80 min are done at closing, and 80 × 20/2160 before; the rest after Monday's reading at 07:50.
    expect(choices(plan('Fri 15:30', { card: 'P1', readyBy: on('Fri 16:00') }))).toContain('lamp 65 (Fri 14:20) Fri 15:30 -> 2026-03-09 08:00');
  });

  it('begins at the next opening where the shop is closed', () => {
    // 30 min at 20 °C, which the night's 12 °C do not go on with; 20 of 30 min, then 12/3 min at 50 °C.
    expect(choices(plan('Sat 09:00', { card: 'T1', readyBy: on('Sat 12:00') }))).toEqual(['air (Fri 16:30) 2026-03-09 07:30 -> 2026-03-09 08:00', 'lamp 50 (Fri 16:36) 2026-03-09 07:30 -> 2026-03-09 07:54']);
  });

  it('answers a time that is past with what can still be had', () => {
    expect(choices(plan('Fri 15:30', { card: 'T1', readyBy: on('Fri 12:00') }))).toEqual(['air (Fri 11:30) Fri 15:30 -> Fri 16:00', 'lamp 50 (Fri 11:36) Fri 15:30 -> Fri 15:54']);
  });

  it('is never where the shop is too cold for the sheet', () => {
    expect(choices(plan('Tue 08:00', { card: 'P1', milestone: 'handling', readyBy: on('Fri 16:00') }, new Shift({ air: null })))[0]).toBe('air (never) Tue 08:00 -> never');
  });
});

describe('the card of a latest start', () => {
  it('is that of the cure that runs or ran last', () => {
    const shift = new Shift();
    const choices = CARDS.map(({ name }) => ({ card: name, line: `latest start 501 ${name} by 2026-03-06T16:00:00.000Z` }));
    expect(refused('Tue 08:00', { readyBy: on('Fri 16:00') }, shift)).toEqual({ code: 'which-card', job: jobNo('501'), choices });
    shift.enters('tomek', 'Tue 08:00', { kind: 'cure', job: '501', card: 'F1' });
    expect(plan('Tue 09:00', { readyBy: on('Fri 16:00') }, shift).planned.card.name).toBe('F1');
  });

  it('has to state the milestone', () => {
    expect(refused('Tue 08:00', { card: 'P1', milestone: 'sand', readyBy: on('Fri 16:00') })).toEqual({ code: 'no-such-milestone', card: cardNamed('P1'), milestone: 'sand' });
  });

  it('needs a job, which need not exist', () => {
    expect(refused('Tue 08:00', { job: null, card: 'P1', readyBy: on('Fri 16:00') })).toEqual({ code: 'nothing-asked' });
    expect(plan('Tue 08:00', { job: jobNo('999'), card: 'P1', readyBy: on('Fri 16:00') }).planned.job).toBe('999');
  });
});

describe('a card of long waits', () => {
  const slow: MaterialCard = { ...cardNamed('P2'), name: 'Z', milestones: [{ kind: 'full', laws: [{ law: 'recipe', stages: [{ lamp: celsius(50), minutes: minutes(660), reaches: 'full' }] }] }] };

  it('has no latest start where a stage is longer than a day and starts again each morning', () => {
    expect(choices(plan('Tue 08:00', { card: 'Z', readyBy: on('Fri 16:00') }, new Shift(), [slow]))).toEqual(['air (never) Tue 08:00 -> never']);
  });
});
