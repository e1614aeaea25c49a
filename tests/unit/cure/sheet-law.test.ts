import { describe, expect, it } from 'vitest';
import type { MilestoneRule, RateLaw } from '../../../src/cure/card.js';
import { expectedShareAt, expectedTemperatureAt, nominalProgress } from '../../../src/cure/expected.js';
import type { HeatEvent } from '../../../src/cure/history.js';
import { stagedShare } from '../../../src/cure/kinetics.js';
import { nominalStretches } from '../../../src/cure/nominal-stretches.js';
import { rateTable, steadyRate } from '../../../src/cure/rate-table.js';
import { sheetLaw, type SheetLaw } from '../../../src/cure/sheet-law.js';
import { celsius, minutes } from '../../../src/cure/units.js';
import { cardNamed } from '../../support/card-shelf.js';
import { foundOff, joint, lampOff, lampSet, on, padSet, read, rows, said, steadyAir } from '../../support/joint.js';

const recipe = (...stages: readonly (readonly [number, number])[]): RateLaw => ({ law: 'recipe', stages: stages.map(([lamp, length]) => ({ lamp: celsius(lamp), minutes: minutes(length), reaches: null })) });
const unheated = (figures: Readonly<Record<number, number>>): RateLaw => ({ law: 'credit', rows: rows(figures) });
const full = (...laws: readonly RateLaw[]): MilestoneRule => ({ kind: 'full', laws });
/** Common practice, no source: 48 h at 20 °C, or 60 min at 30 °C and then 90 min at 60 °C. */
const PRACTICE = full(recipe([30, 60], [60, 90]), unheated({ 20: 2880 }));

function lawOf(rule: MilestoneRule): SheetLaw {
  const law = sheetLaw(rule);
  if (law === null) throw new Error('no law');
  return law;
}

describe('the law behind a recipe and its unheated row', () => {
  it('has about 69 kJ/mol for what common practice asks', () => {
    expect(lawOf(PRACTICE).energy / 1000).toBeCloseTo(69, 0);
    expect(cardNamed('K').milestones.map((rule) => sheetLaw(rule)?.energy ?? null)).toEqual([null, lawOf(PRACTICE).energy]);
  });

  it('meets every figure of the sheet, and none too soon', () => {
    const table = rateTable(lawOf(PRACTICE).rows);
    expect(2880 * steadyRate(table, celsius(20))).toBeCloseTo(1, 9);
    expect(60 * steadyRate(table, celsius(30)) + 90 * steadyRate(table, celsius(60))).toBeCloseTo(1, 9);
    const many = lawOf(full(recipe([30, 60], [60, 90]), unheated({ 15: 4000, 20: 2880, 25: 2000 })));
    const [cold] = many.rows;
    const kinetic = { energy: many.energy, temperature: cold?.temperature ?? celsius(0), minutes: cold?.minutes ?? minutes(0) };
    for (const [temperature, length] of [[15, 4000], [20, 2880], [25, 2000]] as const) expect(stagedShare(kinetic, [{ temperature: celsius(temperature), minutes: minutes(length) }])).toBeLessThanOrEqual(1 + 1e-9);
  });

  it('reaches from the coldest to the hottest of the figures and no further', () => {
    const table = rateTable(lawOf(PRACTICE).rows);
    expect([19.9, 20, 60, 75].map((temperature) => steadyRate(table, celsius(temperature)))).toEqual([0, steadyRate(table, celsius(20)), steadyRate(table, celsius(60)), steadyRate(table, celsius(60))]);
  });

  it.each<[string, MilestoneRule]>([
    ['a recipe of one stage alone', full(recipe([60, 90]))],
    ['a recipe of two stages alone', full(recipe([30, 60], [60, 90]))],
    ['rows alone', full(unheated({ 20: 300, 30: 150 }))],
    ['hotter that is slower', full(recipe([60, 500]), unheated({ 20: 100 }))],
  ])('is none for %s', (_name, rule) => {
    expect(sheetLaw(rule)).toBeNull();
  });
});

describe('the heat as it was set', () => {
  const nominal = (heat: readonly HeatEvent[], air = steadyAir(on('08:00'), 20)) =>
    nominalStretches(joint('08:00', heat, air)).map(({ from, course }) => `${said(from)} ${course.course === 'steady' ? course.temperature : course.course}`);

  it.each<[string, readonly HeatEvent[], readonly string[]]>([
    ['is the air without a lamp', [], ['08:00 20']],
    ['is the setting at once, and the air again at once', [lampSet('09:00', 60), lampOff('10:00')], ['08:00 20', '09:00 60', '10:00 20']],
    ['was on before the panel was closed', [lampSet('07:00', 60)], ['08:00 60']],
    ['takes nothing from readings', [read('08:10', 44), lampSet('09:00', 60), read('09:30', 31)], ['08:00 20', '09:00 60']],
    ['is the air under a pad', [padSet('09:00', 60)], ['08:00 20']],
    ['ends at the last sign of life when it is found off', [lampSet('09:00', 60), foundOff('11:00')], ['08:00 20']],
  ])('%s', (_name, heat, expected) => {
    expect(nominal(heat)).toEqual(expected);
  });

  it('is unknown in unknown air', () => {
    expect(nominal([], steadyAir(on('08:00'), null))).toEqual(['08:00 unknown']);
  });
});

describe('the expected side by the law', () => {
  const law = lawOf(PRACTICE);
  const along = (heat: readonly HeatEvent[], air = 20) => nominalProgress(law, joint('08:00', heat, steadyAir(on('08:00'), air)), celsius(80));

  it('ends with the recipe that it was made of', () => {
    expect(said(along([lampSet('08:00', 30), lampSet('09:00', 60)]).due)).toBe('10:30');
    expect(said(along([]).due)).toBe('Wed 08:00');
  });

  it('ends sooner where the first stage was hotter or the air had worked before', () => {
    expect(along([lampSet('08:00', 60)]).due ?? Infinity).toBeLessThan(on('09:40'));
    expect(expectedShareAt(along([lampSet('12:00', 60)]), on('12:00'))).toBeCloseTo(240 / 2880, 9);
  });

  it('earns nothing in air that is colder than every figure, nor under a lamp above the highest setting', () => {
    expect(along([], 19).due).toBeNull();
    expect(along([lampSet('08:00', 81)]).due).toBeNull();
    expect(expectedTemperatureAt(along([lampSet('08:00', 81)]), on('09:00'))).toBe(81);
  });
});
