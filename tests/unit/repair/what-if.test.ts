import { describe, expect, it } from 'vitest';
import type { MilestoneKind } from '../../../src/cure/card.js';
import { whatIf, type Variant, type WhatIf } from '../../../src/repair/what-if.js';
import type { Outlook } from '../../../src/repair/outlook.js';
import { jobNo } from '../../../src/repair/ids.js';
import { on, said } from '../../support/joint.js';
import { whatIfCommand } from '../../support/questions.js';
import { Shift, warm } from '../../support/shift.js';

// Example cards (invented figures) in the example shop: open 07:30-17:00, air 20 °C, night 12 °C, a reading after 20 min.

type Change = Parameters<typeof whatIfCommand>[0];

function asked(shift: Shift, when: string, change: Change = {}): WhatIf {
  const result = whatIf(whatIfCommand(change), shift.situation('tomek', on(when)));
  if (!result.ok) throw new Error(result.refusal.code);
  return result.whatIf;
}

function refused(shift: Shift, when: string, change: Change = {}): unknown {
  const result = whatIf(whatIfCommand(change), shift.situation('tomek', on(when)));
  return result.ok ? null : result.refusal;
}

const times = (outlook: Outlook | undefined): Partial<Record<MilestoneKind, string>> => Object.fromEntries((outlook?.milestones ?? []).map((one) => [one.kind, said(one.check.dueAt)]));
const name = ({ supposed, air }: Variant): string => (supposed === null ? `air ${String(air)}` : 'setting' in supposed ? `${supposed.heater} ${supposed.setting}` : supposed.kind);
const names = (variants: readonly Variant[]): string[] => variants.map(name);

function begun(card: string, lamp: number | null = null, at = '09:00'): Shift {
  const shift = new Shift();
  shift.enters('tomek', at, { kind: 'cure', job: '501', card, setting: lamp === null ? null : warm(lamp), heater: 'lamp' });
  return shift;
}

describe('what if P1, a panel-temperature card', () => {
  it('puts every heat that the card has rows for beside the book, hottest first', () => {
    const found = asked(begun('P1'), '10:00');
    // Air 20 °C: 300 min; full sleeps, since 480 of 2160 min are done at closing.
    expect(times(found.standing)).toEqual({ handling: '14:00', full: 'never' });
    expect(names(found.others)).toEqual(['lamp 65', 'lamp 40', 'lamp 30']);
    // 80 min at 20 °C, then handling 25 × (1 - 80/300) = 18.33 min from 10:20; full 80 × (1 - 80/2160) = 77.04 min.
    expect(times(found.others[0]?.outlook)).toEqual({ handling: '10:39', full: '11:38' });
    // 75 × (1 - 80/300) = 55 min; full 480 × 0.963 = 462 min is more than the 400 until closing.
    expect(times(found.others[1]?.outlook)).toEqual({ handling: '11:15', full: 'never' });
    // 150 × 0.7333 = 110 min.
    expect(times(found.others[2]?.outlook)).toEqual({ handling: '12:10', full: 'never' });
    expect(found.others.map(({ readAt }) => said(readAt))).toEqual(['10:20', '10:20', '10:20']);
    expect([said(found.alone), found.air, found.closedAt]).toEqual(['17:00', null, null]);
  });

  it('shows the heat asked for from the moment asked for, and at most two others', () => {
    const found = asked(begun('P1'), '10:00', { setting: warm(65), from: on('13:00') });
    // Handling 14:00 without heat; 240 of 300 min at 13:00, 260 at 13:20, then 25 × 40/300 = 3.33 min.
    expect(times(found.asked?.outlook)).toEqual({ handling: '13:24', full: '14:31' });
    expect([said(found.from), said(found.asked?.readAt ?? null)]).toEqual(['13:00', '13:20']);
    expect(names(found.others)).toEqual(['lamp 40', 'lamp 30']);
  });

  it('takes the shop unit where none was typed', () => {
    const shift = new Shift({ unit: 'F' });
    shift.enters('tomek', '09:00', { kind: 'cure', job: '501', card: 'P1' });
    expect(times(asked(shift, '10:00', { setting: warm(149) }).asked?.outlook)).toEqual({ handling: '10:39', full: '11:38' });
  });

  it('shows the joint without heat where it has some', () => {
    const shift = begun('P1', 30);
    shift.enters('tomek', '09:20', { kind: 'read', job: '501', value: warm(30) });
    const found = asked(shift, '10:00');
    // 20 of 300, 40 of 150 min; then 300 × (1 - 1/15 - 4/15) = 200 min in the air.
    expect(times(found.air?.outlook)).toEqual({ handling: '13:20', full: 'never' });
    // 150 × (1 - 1/15) = 140 min from 09:20.
    expect(times(found.standing)).toEqual({ handling: '11:40', full: 'never' });
  });

  it('leaves out what changes nothing', () => {
    const shift = begun('P1', 30);
    shift.enters('tomek', '09:20', { kind: 'read', job: '501', value: warm(30) });
    expect(names(asked(shift, '10:00').others)).toEqual(['lamp 65', 'lamp 40']);
    expect(asked(begun('P1'), '10:00').air).toBeNull();
  });

  it('supposes other air as a reading at that moment', () => {
    const found = asked(begun('P1'), '10:00', { air: warm(30) });
    // 60 of 300 min, then 150 × 0.8 = 120 min.
    expect(name(found.asked ?? expect.fail())).toBe('air 30');
    expect(times(found.asked?.outlook)).toEqual({ handling: '12:00', full: 'never' });
  });

  it('supposes heat and other air together', () => {
    const found = asked(begun('P1'), '10:00', { setting: warm(40), air: warm(30) });
    // 60 of 300 min, 20 of 150 until the reading, then 75 × (1 - 1/5 - 2/15) = 50 min.
    expect([name(found.asked ?? expect.fail()), found.asked?.air, times(found.asked?.outlook)['handling']]).toEqual(['lamp 40', 30, '11:10']);
    // The others are what they would be in the air as it stands.
    expect(found.others.map((one) => [name(one), one.air])).toEqual([['lamp 65', null], ['lamp 30', null]]);
    expect(times(found.others[0]?.outlook)['handling']).toBe('10:39');
  });

  it('takes the lamp off at the moment asked for', () => {
    const shift = begun('P1', 30);
    shift.enters('tomek', '09:20', { kind: 'read', job: '501', value: warm(30) });
    const found = asked(shift, '10:00', { unheated: true, from: on('10:20') });
    // 20 of 300, 60 of 150 min; then 300 × (1 - 1/15 - 2/5) = 160 min in the air.
    expect([name(found.asked ?? expect.fail()), said(found.from), times(found.asked?.outlook)['handling'], found.air]).toEqual(['air', '10:20', '13:00', null]);
    expect(times(asked(shift, '10:00', { unheated: true, from: on('10:20'), air: warm(30) }).asked?.outlook)['handling']).toBe('11:40');
  });

  it('takes a pad as it takes a lamp, by a reading', () => {
    const found = asked(begun('P1'), '10:00', { setting: warm(65), heater: 'pad' });
    expect([name(found.asked ?? expect.fail()), times(found.asked?.outlook)]).toEqual(['pad 65', { handling: '10:39', full: '11:38' }]);
  });

  it('assumes no reading that could not be taken before closing', () => {
    const found = asked(begun('P1'), '16:45', { setting: warm(65) });
    expect([found.asked?.readAt, times(found.asked?.outlook)]).toEqual([null, times(found.standing)]);
    expect(found.alone).toBeNull();
  });

  it('counts on past closing where somebody said that they stay', () => {
    const shift = begun('P1', 30);
    shift.enters('tomek', '16:30', { kind: 'stay', job: '501' });
    const found = asked(shift, '16:45', { setting: warm(65) });
    // 480 of 2160 min at 17:00; the night's 12 °C count nothing until 17:05, then 80 × (1 - 480/2160) = 62.2 min.
    expect(times(found.asked?.outlook)['full']).toBe('18:08');
    expect(found.alone).toBeNull();
  });

  it('says that somebody has to stay where the shop is closed at that moment', () => {
    const found = asked(begun('P1'), '19:00', { setting: warm(65) });
    expect(said(found.alone)).toBe('19:00');
  });
});

describe('what if, from a moment in the past', () => {
  it('replaces the heat that was entered since then', () => {
    const shift = begun('P1', 30);
    shift.enters('tomek', '09:20', { kind: 'read', job: '501', value: warm(30) });
    // Never lit: 300 min of air. Lit at 65 from the start: 20 of 300, then 25 × 14/15 = 23.3 min.
    expect(times(asked(shift, '10:00', { from: on('09:00') }).air?.outlook)).toEqual({ handling: '14:00', full: 'never' });
    expect(times(asked(shift, '10:00', { from: on('09:00'), setting: warm(65) }).asked?.outlook)['handling']).toBe('09:44');
  });

  it('begins with the cure at the earliest', () => {
    expect(said(asked(begun('P1'), '10:00', { from: on('07:45'), setting: warm(65) }).from)).toBe('09:00');
  });

  it('is refused before the paste of a panel that is not closed', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'paste', job: '501', card: 'P1' });
    expect(refused(shift, '09:10', { from: on('08:30') })).toEqual({ code: 'before-step', at: on('08:30'), step: 'pasted', stepAt: on('09:00') });
  });
});

describe('what if the panel is not closed yet', () => {
  it('takes it for closed at that moment', () => {
    const shift = new Shift();
    shift.enters('tomek', '09:00', { kind: 'paste', job: '501', card: 'P1' });
    const found = asked(shift, '09:10', { setting: warm(65), from: on('09:30') });
    expect([said(found.closedAt), times(found.standing)['handling'], times(found.asked?.outlook)['handling']]).toEqual(['09:30', '14:30', '10:14']);
    expect(said(asked(shift, '09:10').closedAt)).toBe('09:10');
  });
});

describe('what if a recipe card', () => {
  // P2: lamp 35 for 80 min, then 55 for 130 min, with 10 min for the check between them.
  it('runs the recipe from its beginning', () => {
    const found = asked(begun('P2'), '10:00');
    expect([names(found.others), times(found.others[0]?.outlook)]).toEqual([['recipe'], { handling: '11:20', full: '13:40' }]);
  });

  it('runs the recipe from its next stage', () => {
    const shift = begun('P2', 35);
    // The first stage ends at 10:20 by itself.
    expect(times(asked(shift, '10:00').others[0]?.outlook)).toEqual({ handling: '10:20', full: '12:40' });
    shift.enters('tomek', '10:20', { kind: 'check', job: '501', result: 'hard' });
    expect(times(asked(shift, '10:25').others[0]?.outlook)['full']).toBe('12:35');
    expect(times(asked(shift, '11:00').others[0]?.outlook)['full']).toBe('13:10');
  });

  it('does not begin a stage after closing', () => {
    const found = asked(begun('P2', null, '15:00'), '15:00');
    // Handling 16:20; full 16:30 + 130 min is after 17:00.
    expect(times(found.others[0]?.outlook)).toEqual({ handling: '16:20', full: 'never' });
    expect(times(asked(begun('P2', null, '15:00'), '16:00').others[0]?.outlook)).toEqual({});
  });

  it('takes a lamp at or above a stage for that stage', () => {
    const found = asked(begun('K'), '10:00', { setting: warm(60) });
    expect([times(found.asked?.outlook), found.asked?.readAt]).toEqual([{ handling: '11:00', full: '12:30' }, null]);
    expect(times(found.others[0]?.outlook)).toEqual({ handling: '11:00', full: '12:40' });
  });
});

describe('what if the card knows no heat', () => {
  it.each(['G1', 'S1', 'E1'])('%s has nothing to put beside the book', (card) => {
    const found = asked(begun(card), '10:00', { setting: warm(40) });
    expect([found.others, found.air, found.alone, found.asked?.readAt]).toEqual([[], null, null, null]);
    expect(times(found.asked?.outlook)).toEqual(times(found.standing));
  });
});

describe('a supposition that cannot be', () => {
  it.each([
    ['a number without unit over the maximum', 'P1', { setting: warm(150) }, { code: 'which-unit', value: 150, maximum: 85, line: 'what if 501 j1 lamp 150F' }],
    ['a setting over the maximum', 'P1', { setting: warm(90, 'C') }, { code: 'supposed-over-maximum', value: 90, maximum: 85, card: 'P1' }],
    ['a lamp over the recipe card', 'P2', { setting: warm(61, 'C') }, { code: 'supposed-over-maximum', value: 61, maximum: 60, card: 'P2' }],
    ['a lamp colder than every stage', 'P2', { setting: warm(30) }, { code: 'supposed-below-recipe', value: 30, coldest: 35, card: 'P2' }],
    ['a pad on a recipe', 'P2', { setting: warm(40), heater: 'pad' as const }, { code: 'supposed-pad-on-recipe', card: 'P2' }],
    ['no lamp setting at all', 'P1', { setting: warm(5) }, { code: 'lamp-too-cold', value: 5 }],
    ['air that is no shop air', 'P1', { air: warm(68) }, { code: 'air-too-hot', value: 68, asCelsius: 20, fahrenheitLine: 'what if 501 j1 air 68F' }],
  ])('%s', (_, card, change, refusal) => {
    expect(refused(begun(card), '10:00', change)).toMatchObject(refusal);
  });

  it('an unknown job, and a job on which nothing runs', () => {
    expect(refused(begun('P1'), '10:00', { job: jobNo('502') })).toMatchObject({ code: 'unknown-job', choices: [{ line: 'what if 501' }] });
    const shift = begun('E1');
    shift.enters('tomek', '10:00', { kind: 'check', job: '501', result: 'hard' });
    expect(refused(shift, '10:30')).toEqual({ code: 'nothing-runs', job: jobNo('501') });
  });
});
