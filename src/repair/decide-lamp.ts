import type { MaterialCard } from '../cure/card.js';
import type { Heater } from '../cure/history.js';
import { celsius, celsiusFromFahrenheit, later, type Celsius, type Instant } from '../cure/units.js';
import type { EntryCommand, TypedTemperature } from './commands.js';
import { refuse, type Decision, type NewFact, type Note, type Situation } from './decision.js';
import type { LampName } from './ids.js';
import { isLeftOn, litOutlooks } from './left-on.js';
import { lampAlone, staysWith } from './lamp-alone.js';
import { lineOf } from './line-of.js';
import { otherRecipe } from './other-recipe.js';
import { heatAt, hottestSetting, isOver, waitingMilestones, type MilestoneOutlook, type Outlook } from './outlook.js';
import type { Refusal } from './refusal.js';
import { cureFor } from './subject.js';
import { untimely } from './timely.js';
import { whichLamp } from './which-lamp.js';

type Of<K extends EntryCommand['kind']> = Extract<EntryCommand, { readonly kind: K }>;
type Setting = { readonly ok: true; readonly value: Celsius; readonly notes: readonly Note[]; /** The lamp leaves the job it was on. */ readonly moved: readonly NewFact[] } | { readonly ok: false; readonly refusal: Refusal };

/** Colder than this is no lamp setting but a slip of the thumb. */
export const COLDEST_LAMP = 15;

/** A typed temperature in °C: its own unit, else the shop's. */
export const inCelsius = (typed: TypedTemperature, { shop }: Pick<Situation, 'shop'>): Celsius =>
  (typed.unit ?? shop.unit) === 'F' ? celsiusFromFahrenheit(typed.value) : celsius(typed.value);

/**
 * A lamp setting checked against the card. A number without unit above the card's maximum asks whether °F was meant
 * and counts nothing; with a unit it is refused.
 */
export function settingFor(typed: TypedTemperature, card: MaterialCard, command: Of<'lamp'> | Of<'cure'>, situation: Situation): Setting {
  const value = inCelsius(typed, situation);
  const maximum = hottestSetting(card, command.heater);
  const before = lampBefore(command, situation);
  if ('code' in before) return { ok: false, refusal: before };
  if (value < COLDEST_LAMP) return { ok: false, refusal: { code: 'lamp-too-cold', value } };
  if (maximum === null || value <= maximum) return { ok: true, value, notes: recipeNotes(card, value, command.heater), moved: before.moved };
  if (typed.unit !== null) return { ok: false, refusal: { code: 'over-lamp-maximum', value, maximum, card: card.name } };
  const other = celsiusFromFahrenheit(typed.value);
  const line = lineOf({ ...command, setting: { value: typed.value, unit: 'F' } });
  return { ok: false, refusal: { code: 'which-unit', value: typed.value, maximum, asCelsius: other <= maximum ? other : null, line } };
}

/** A pad runs no recipe, and a lamp colder than every stage counts nothing: worth saying at once. */
export function recipeNotes(card: MaterialCard, value: Celsius, heater: Heater): Note[] {
  const stages = card.milestones.flatMap((rule) => rule.laws.flatMap((law) => (law.law === 'recipe' ? law.stages.map((stage) => stage.lamp) : [])));
  if (heater === 'pad') return stages.length > 0 ? [{ note: 'pad-no-recipe' }] : [];
  const lowest = stages.length === 0 ? null : celsius(Math.min(...stages));
  return lowest !== null && value < lowest ? [{ note: 'below-stage', asked: lowest }] : [];
}

function lampBefore(command: Of<'lamp'> | Of<'cure'>, situation: Situation): Refusal | { readonly moved: readonly NewFact[] } {
  const { shop } = situation;
  const { lamp, heater } = command;
  if (lamp === null) return { moved: [] };
  const [own, others] = heater === 'pad' ? [shop.pads, shop.lamps] : [shop.lamps, shop.pads];
  return own.includes(lamp) ? lampElsewhere(lamp, command, situation) : { code: 'unknown-lamp', lamp, heater, isOther: others.includes(lamp) };
}

/** One lamp or pad heats one job: asked first, then it counts as off where it was. Where nothing waits under it any more nobody is asked. */
export function lampElsewhere(lamp: LampName, command: Of<'lamp'> | Of<'cure'> | Of<'on'>, { shop, book, now }: Situation): Extract<Refusal, { readonly code: 'lamp-elsewhere' }> | { readonly moved: readonly NewFact[] } {
  const { job, when } = command;
  const others = litOutlooks(book, shop, book.openJobs(), now).filter((outlook) => outlook.cure.lamp === lamp && outlook.cure.job !== job);
  const elsewhere = others.find((outlook) => !isOver(outlook) && heatAt(outlook, now).lamp === 'on');
  const left = others.filter((outlook) => isLeftOn(outlook, now)).map((outlook) => offThere(outlook, when.latest));
  if (elsewhere === undefined) return { moved: left };
  const { cure } = elsewhere;
  if (when.confirmed) return { moved: [...left, { job: cure.job, happenedAt: when.latest, fact: { type: 'lamp-off', joint: cure.ref.joint } }] };
  return { code: 'lamp-elsewhere', lamp, heater: cure.heater, job: cure.job, line: lineOf({ ...command, when: { ...when, stated: true, confirmed: true } }) };
}

/** What is over keeps the heat that its checks rested on. */
const offThere = ({ cure }: Outlook, at: Instant): NewFact => ({ job: cure.job, happenedAt: cure.checks.reduce((latest, check) => later(latest, check.at), at), fact: { type: 'lamp-off', joint: cure.ref.joint } });

/** Lamp on, or turned to another setting; without a number the next stage of the recipe. */
export function decideLamp(command: Of<'lamp'>, situation: Situation): Decision {
  const late = untimely(command, situation);
  if (late !== null) return refuse(late);
  const found = cureFor(command, situation);
  if (!found.ok) return refuse(found.refusal);
  const { outlook } = found;
  const { cure } = outlook;
  const typed = command.setting ?? nextStage(outlook);
  const unchecked = stageUnchecked(outlook);
  if (typed !== null && unchecked !== null && !command.when.confirmed) {
    const early = checkFirst({ ...command, setting: typed }, command.setting === null, outlook, unchecked, situation);
    if (early !== null) return refuse(early);
  }
  if (typed === null) return refuse({ code: 'no-next-stage', job: cure.job });
  // `up` turns up what heats already.
  const heater = command.setting === null && command.lamp === null ? cure.heater : command.heater;
  // Without a name it is the one that was on this joint, which may heat another job by now.
  const own = command.lamp === null && cure.heater === heater ? cure.lamp : null;
  const setting = settingFor(typed, cure.card, { ...command, heater, job: cure.job }, situation);
  if (!setting.ok) return refuse(setting.refusal);
  const back = own === null ? { moved: [] } : lampElsewhere(own, { ...command, heater, job: cure.job, joint: cure.ref.joint }, situation);
  if ('code' in back) return refuse(back);
  const about = { job: cure.job, cure: cure.ref };
  const heat = heatAt(outlook, situation.now);
  const which = own !== null || heat.lamp === 'on' ? null : whichLamp({ ...command, heater, setting: typed }, cure.job, cure.ref.joint, situation);
  if (which !== null) return refuse(which);
  if (command.setting === null && heat.lamp === 'on' && heat.setting === setting.value) return { ok: true, facts: [], about, notes: [{ note: 'already-so' }] };
  const alone = lampAlone({ ...command, heater, setting: typed }, cure, setting.value, situation);
  if (alone !== null) return refuse(alone);
  const fact: NewFact = { job: cure.job, happenedAt: command.when.latest, fact: { type: 'lamp-set', joint: cure.ref.joint, setting: setting.value, typed, lamp: command.lamp ?? own, heater } };
  const early: Note[] = unchecked !== null && outlook.heat.setting !== null && setting.value > outlook.heat.setting ? [{ note: 'unchecked', milestone: unchecked.kind }] : [];
  return { ok: true, facts: [...setting.moved, ...back.moved, fact, ...staysWith(command, cure.job, cure.ref.joint, situation)], about, notes: [...setting.notes, ...early, ...otherRecipe(cure, setting.value, heater, situation)] };
}

/** More heat before the check that ends the running stage: asked, whether it was typed or is the next stage of the recipe. */
function checkFirst(command: Of<'lamp'>, isNext: boolean, outlook: Outlook, unchecked: MilestoneOutlook, situation: Situation): Refusal | null {
  const { job, ref, card } = outlook.cure;
  const heat = heatAt(outlook, situation.now);
  const setting = command.setting === null ? null : inCelsius(command.setting, situation);
  const maximum = hottestSetting(card, command.heater);
  if (setting === null || (!isNext && (outlook.heat.setting === null || setting <= outlook.heat.setting || (maximum !== null && setting > maximum)))) return null;
  const stays = heat.lamp === 'on' && heat.setting !== null ? { setting: heat.setting, line: lineOf({ kind: 'on', job, joint: ref.joint, lamp: null, when: { earliest: situation.now, latest: situation.now, stated: false, confirmed: false } }) } : null;
  return { code: 'check-first', job, milestone: unchecked.kind, dueAt: unchecked.check.dueAt, setting, card, stays, line: lineOf({ ...command, job, joint: ref.joint, when: { ...command.when, stated: true, confirmed: true } }) };
}

/** The check that ends the running stage and that nobody has confirmed: the next stage is not for now. */
function stageUnchecked(outlook: Outlook): MilestoneOutlook | null {
  const next = outlook.stages.findIndex((run) => run.began === null);
  const reaches = outlook.stages[next - 1]?.stage.reaches ?? null;
  return waitingMilestones(outlook).find((one) => one.kind === reaches) ?? null;
}

/** The recipe's first stage that has not begun; the running one when all have. */
function nextStage(outlook: Outlook): TypedTemperature | null {
  const next = outlook.stages.find((run) => run.began === null) ?? outlook.stages.at(-1);
  return next === undefined ? null : { value: next.stage.lamp, unit: 'C' };
}
