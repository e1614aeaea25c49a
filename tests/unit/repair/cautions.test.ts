import { describe, expect, it } from 'vitest';
import { celsius } from '../../../src/cure/units.js';
import { hears } from '../../support/spoken.js';
import { Shift, warm } from '../../support/shift.js';
import { cautionLine } from '../../../src/reply/compose/cautions.js';
import { CAUTIONS, type CautionKind } from '../../../src/repair/procedure.js';

type Short = Parameters<Shift['says']>[2];

/** The cautions in an answer. Wording is told apart by its first sentence. */
function cautionsIn(lines: readonly string[]): CautionKind[] {
  const said = lines.join('\n');
  return CAUTIONS.filter((kind) => said.includes(cautionLine(kind, {}).replaceAll('**', '')));
}

/** Says all of them a minute apart and gives the answer to the last. */
function answerTo(shift: Shift, ...shorts: Short[]): readonly string[] {
  return shorts.map((short, index) => hears(shift, 'tomek', `09:${String(index).padStart(2, '0')}`, short)).at(-1)?.lines ?? [];
}

const cure = (card: string, heat: object = {}): Short => ({ kind: 'cure', job: '501', card, ...heat });

describe('the caution that an answer carries', () => {
  it.each<[string, Short[], CautionKind[]]>([
    ['paste', [{ kind: 'paste', job: '501', card: 'P1' }], ['paste']],
    ['a lamp', [cure('P1', { setting: warm(30) })], ['lamp']],
    ['a lamp that is turned up', [cure('P1'), { kind: 'lamp', job: '501', setting: warm(40) }], ['lamp']],
    ['a lamp hotter than batteries bear', [cure('P1', { setting: warm(65) })], ['battery']],
    ['a pad hotter than batteries bear', [cure('P1', { setting: warm(65), heater: 'pad' })], ['battery']],
    ['the first reading', [cure('P1'), { kind: 'read', job: '501', value: warm(30) }], ['reading']],
    ['a second reading', [cure('P1'), { kind: 'read', job: '501', value: warm(30) }, { kind: 'read', job: '501', value: warm(31) }], []],
    ['a reading on tape', [cure('P1'), { kind: 'read', job: '501', value: warm(30), method: 'tape' }], []],
    ['a panel closed on air', [cure('P1')], []],
    ['set glass', [cure('G1')], ['glass']],
    ['wax', [cure('W1')], ['wax']],
  ])('%s', (_, shorts, cautions) => {
    expect(cautionsIn(answerTo(new Shift(), ...shorts))).toEqual(cautions);
  });

  it('confirmed handling: clamps', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1' });
    shift.enters('tomek', '08:00', { kind: 'read', job: '501', value: warm(65) });
    expect(cautionsIn(hears(shift, 'tomek', '08:27', { kind: 'check', job: '501', milestone: 'handling', result: 'hard' }).lines)).toEqual(['clamps-off']);
  });

  it('is the shop\'s own figure for batteries', () => {
    expect(cautionsIn(answerTo(new Shift({ batteryCaution: celsius(45) }), cure('P1', { setting: warm(50) })))).toEqual(['battery']);
  });

  it('gives way to what is graver', () => {
    const shift = new Shift();
    const lines = answerTo(shift, cure('P1', { setting: warm(65) }), { kind: 'read', job: '501', value: warm(88) });
    expect(cautionsIn(lines)).toEqual([]);
  });

  it.each<Short[]>([[{ kind: 'paste', job: '501', card: 'S1' }], [{ kind: 'cure', job: '501', card: 'S1', setting: warm(35) }], [{ kind: 'air', value: warm(20), humidity: 60 }, { kind: 'paste', job: '501', card: 'G1' }, { kind: 'read', job: '501', value: warm(19) }]])('leaves the answer at six lines, case %#', (...shorts) => {
    expect(answerTo(new Shift(), ...shorts).length).toBeLessThanOrEqual(6);
  });

  it('has a line for every kind, none of them leave', () => {
    for (const kind of CAUTIONS) {
      expect(cautionLine(kind, {}).length).toBeGreaterThan(10);
      expect(cautionLine(kind, {})).not.toMatch(/\b(?:safe|you may|guaranteed)\b/i);
    }
  });
});
