import { describe, expect, it } from 'vitest';
import type { MaterialCard } from '../../../src/cure/card.js';
import { celsius, minutesBetween } from '../../../src/cure/units.js';
import type { BuildUp } from '../../../src/cure/warm-up.js';
import { likelyDue, likelyOf } from '../../../src/repair/expected.js';
import { lookAt, type MilestoneOutlook, type Outlook } from '../../../src/repair/outlook.js';
import { on, said } from '../../support/joint.js';
import { Shift, warm } from '../../support/shift.js';

function cureUnderLamp(card: string, setting: number): { readonly shift: Shift; readonly outlook: Outlook } {
  const shift = new Shift();
  shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card });
  shift.enters('tomek', '08:00', { kind: 'lamp', job: '501', setting: warm(setting), yes: true });
  return { shift, outlook: shift.outlook('501') };
}

function milestone(outlook: Outlook, kind: MilestoneOutlook['kind']): MilestoneOutlook {
  const found = outlook.milestones.find((one) => one.kind === kind);
  if (found === undefined) throw new Error(`no ${kind}`);
  return found;
}

/** P1 under a lamp of 60 °C, with another card or build-up. */
function changed(card: Partial<MaterialCard>, buildUp: BuildUp | null = null): Outlook {
  const { shift, outlook } = cureUnderLamp('P1', 60);
  return lookAt({ ...outlook.cure, card: { ...outlook.cure.card, ...card }, buildUp }, shift.shop, []);
}

const handling = (outlook: Outlook) => likelyDue(outlook, milestone(outlook, 'handling')) ?? Infinity;

describe('the likely time of a joint under a lamp', () => {
  it('goes by the build-up, and by flanges as long as nobody said', () => {
    expect(handling(changed({}, 'two-sheets-with-flange'))).toBe(handling(changed({})));
    expect(handling(changed({}, 'thin-skin'))).toBeLessThan(handling(changed({})));
  });

  it('has the margin of the card in it, as what is announced has', () => {
    const [plain, longer] = [handling(changed({})), handling(changed({ marginPercent: 25 }))];
    // Rows alone give a quarter more than what is left after the warm-up, and less than a quarter of all.
    expect(longer).toBeGreaterThan(plain);
    expect((longer - on('08:00')) / (plain - on('08:00'))).toBeLessThan(1.25);
  });

  it('counts nothing above the highest panel temperature', () => {
    expect(handling(changed({ maxPanel: celsius(60) }))).toBe(handling(changed({})));
    expect(likelyDue(changed({ maxPanel: celsius(45) }), milestone(changed({ maxPanel: celsius(45) }), 'handling'))).toBeNull();
  });

  it('is none for a joint that was read over the maximum, and none after a soft check', () => {
    const { shift } = cureUnderLamp('P1', 60);
    shift.enters('tomek', '08:20', { kind: 'read', job: '501', value: warm(88) });
    expect(likelyOf(shift.outlook('501'), milestone(shift.outlook('501'), 'handling'))).toBeNull();
    const other = cureUnderLamp('P1', 60).shift;
    other.enters('tomek', '13:00', { kind: 'check', job: '501', result: 'soft' });
    expect(likelyOf(other.outlook('501'), milestone(other.outlook('501'), 'handling'))).toBeNull();
  });

  it('is none where it is no news', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'P1' });
    expect(likelyOf(shift.outlook('501'), milestone(shift.outlook('501'), 'handling'))).toBeNull();
  });
});

describe('the likely time of a recipe', () => {
  it('follows the law of the sheet where there is one, on the settings alone', () => {
    const { shift, outlook } = cureUnderLamp('K', 60);
    const likely = likelyOf(outlook, milestone(outlook, 'full'));
    // 95 min at 60 °C by the law; announced are 60 and 90.
    expect([likely?.by, said(likely?.at ?? null), Math.round((likely?.by === 'law' ? likely.energy : 0) / 1000)]).toEqual(['law', '09:36', 69]);
    shift.enters('tomek', '08:30', { kind: 'read', job: '501', value: warm(41) });
    expect(likelyOf(shift.outlook('501'), milestone(shift.outlook('501'), 'full'))).toEqual(likely);
  });

  it('is none for one stage or several stages alone', () => {
    const recipe = cureUnderLamp('P2', 55).outlook;
    expect(recipe.milestones.map((one) => likelyOf(recipe, one))).toEqual([null, null]);
    const stage = cureUnderLamp('K', 60).outlook;
    expect(likelyOf(stage, milestone(stage, 'handling'))).toBeNull();
  });

  it('never changes what is announced', () => {
    const { outlook } = cureUnderLamp('K', 60);
    const full = milestone(outlook, 'full');
    expect(said(full.check.dueAt)).toBe('10:30');
    expect(minutesBetween(likelyDue(outlook, full) ?? on('08:00'), full.check.dueAt ?? on('08:00'))).toBeGreaterThan(5);
  });

  it('takes a pad for no lamp', () => {
    const shift = new Shift();
    shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'K' });
    const outlook = shift.outlook('501');
    const padded = lookAt({ ...outlook.cure, heat: [{ kind: 'lamp-set', at: on('08:00'), setting: celsius(60), heater: 'pad' }] }, shift.shop, []);
    expect(likelyOf(padded, milestone(padded, 'full'))).toEqual(likelyOf(outlook, milestone(outlook, 'full')));
  });
});
