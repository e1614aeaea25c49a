import { describe, expect, it } from 'vitest';
import { lampName } from '../../../src/repair/ids.js';
import { composeWhen } from '../../../src/reply/compose/questions.js';
import { toText } from '../../../src/reply/to-text.js';
import { on } from '../../support/joint.js';
import { Shift, warm } from '../../support/shift.js';

const A = lampName('A');
const when = (shift: Shift, job: string, at: string): string[] => toText(composeWhen(shift.outlook(job), { shop: shift.shop, now: on(at) })).split('\n');
const likely = (lines: readonly string[]): string[] => lines.flatMap((line) => /[,;] (?:likely )?about .*/.exec(line) ?? []);

function underLamp(setting = 60, card = 'P1'): Shift {
  const shift = new Shift();
  shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card });
  shift.enters('tomek', '08:10', { kind: 'lamp', job: '501', setting: warm(setting), lamp: A });
  return shift;
}

describe('`when` about a lamp that nobody has read', () => {
  it('gives the announced time and, in one short clause, what a reading would show', () => {
    const lines = when(underLamp(), '501', '08:12');
    expect(lines).toEqual([
      '501 P1, Tomek, lamp A 60 °C.',
      expect.stringMatching(/^Handling strength earliest 13:00, likely later; about 09:\d\d if a reading shows it\.$/),
      expect.not.stringContaining('if a reading'),
      'P1 is an example card, not your data sheet.',
    ]);
  });

  it('says `likely` where the air was read', () => {
    const shift = underLamp();
    shift.enters('tomek', '08:11', { kind: 'air', value: warm(20) });
    expect(when(shift, '501', '08:12')[1]).toMatch(/^Handling strength 13:00 by the clock, likely about 09:\d\d if a reading shows it\.$/);
  });

  it('says a time that has none yet', () => {
    const shift = underLamp();
    shift.enters('tomek', '08:11', { kind: 'air', value: warm(10) });
    expect(when(shift, '501', '08:12')[1]).toMatch(/, likely about 09:\d\d if a reading shows it\.$/);
  });

  it('goes on while the joint is still warming up, and stops when a reading shows what there is', () => {
    const shift = underLamp();
    shift.enters('tomek', '08:20', { kind: 'read', job: '501', value: warm(38) });
    expect(likely(when(shift, '501', '08:21'))).toHaveLength(1);
    shift.enters('tomek', '09:00', { kind: 'read', job: '501', value: warm(60) });
    expect(likely(when(shift, '501', '09:01'))).toEqual([]);
  });

  it('goes by the build-up that somebody named', () => {
    const [slow] = likely(when(underLamp(), '501', '08:12'));
    const thin = underLamp();
    thin.enters('tomek', '08:11', { kind: 'build-up', job: '501', buildUp: 'thin-skin' });
    const [fast] = likely(when(thin, '501', '08:12'));
    expect([slow, fast]).toEqual([expect.stringContaining('about 09:'), expect.stringContaining('about 08:')]);
  });

  it.each<[string, () => readonly string[]]>([
    ['without a lamp', () => { const shift = new Shift(); shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1' }); return when(shift, '501', '08:12'); }],
    ['once the lamp is off', () => { const shift = underLamp(); shift.enters('tomek', '08:20', { kind: 'off', job: '501' }); return when(shift, '501', '08:21'); }],
    ['once the likely time has passed', () => when(underLamp(), '501', '11:00')],
    ['of a joint over the maximum', () => { const shift = underLamp(); shift.enters('tomek', '08:20', { kind: 'read', job: '501', value: warm(88) }); return when(shift, '501', '08:21'); }],
    ['of what is due', () => when(underLamp(), '501', '13:00')],
    ['of a recipe, which nothing confirms', () => { const shift = new Shift(); shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'K' }); shift.enters('tomek', '08:10', { kind: 'lamp', job: '501', setting: warm(60), yes: true }); return when(shift, '501', '08:12'); }],
    ['of a wait that no lamp shortens', () => underTimedCard()],
  ])('says nothing likely %s', (_name, lines) => {
    expect(likely(lines())).toEqual([]);
  });
});

function underTimedCard(): readonly string[] {
  const shift = new Shift();
  shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'E1' });
  shift.enters('tomek', '08:05', { kind: 'lamp', job: '501', setting: warm(40) });
  return when(shift, '501', '08:12');
}
