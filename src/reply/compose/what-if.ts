import { milestoneShare } from '../../cure/forecast.js';
import { later, type Celsius } from '../../cure/units.js';
import type { TypedTemperature } from '../../repair/commands.js';
import { lineOf } from '../../repair/line-of.js';
import { currentMilestone, holdOf, needsReading, waitingMilestones, type MilestoneOutlook, type Outlook } from '../../repair/outlook.js';
import { sameTimes, type Variant, type WhatIf } from '../../repair/what-if.js';
import type { WhatIfRefusal } from '../../repair/what-if-refusal.js';
import type { Answer, Button } from '../answer.js';
import { heatName } from './heat-name.js';
import { composeRefusal } from './refusal.js';
import { exampleNote, title } from './state.js';
import { answer, button, capital, clock, degrees, MILESTONE_WORDS, percent, tidy, type Setting } from './words.js';

/** A phone shows so many lines without scrolling. */
const MOST_LINES = 6;

/** What the book says, and beside it what would come of other heat: a supposition is never mistaken for the book. */
export function composeWhatIf(whatIf: WhatIf, setting: Setting): Answer {
  const { standing, asked, others, air, alone } = whatIf;
  const note = exampleNote(standing.cure.card, setting);
  const first = [headLine(whatIf, setting), ...(asked === null ? [] : [variantLine(asked, whatIf, setting)])];
  const last = [air, alone, note].filter((one) => one !== null).length;
  const between = others.slice(0, Math.max(0, MOST_LINES - first.length - last)).map((one) => variantLine(one, whatIf, setting));
  const tail = [air === null ? null : variantLine(air, whatIf, setting), aloneLine(whatIf, setting), note];
  return answer('plain', [...first, ...between, ...tail], buttonsFor(whatIf, setting));
}

function headLine({ standing, closedAt }: WhatIf, setting: Setting): string {
  const held = holdWords(standing, setting);
  const closed = closedAt === null ? 'as it stands' : `if closed ${clock(closedAt, setting)}`;
  return `${title(standing)} what if, nothing is stored. ${held}${capital(closed)}: ${times(standing, false, setting)}.`;
}

function aloneLine({ alone, from }: WhatIf, setting: Setting): string | null {
  if (alone === null) return null;
  return alone > from ? `No lamp runs alone: after ${clock(alone, setting)} it counts only if somebody stays.` : 'The shop is closed then: heat counts only while somebody stays.';
}

function holdWords(standing: Outlook, { now }: Setting): string {
  const current = currentMilestone(standing, now);
  return current !== null && holdOf(standing, current) !== null ? '**HELD**, the foreman decides. ' : '';
}

/** `Lamp 65 °C from 14:00: handling 14:45, full **15:40**, if a reading shows 65 °C by 14:20.` */
function variantLine(variant: Variant, { from, standing, asked }: WhatIf, setting: Setting): string {
  const first = variant === asked;
  const since = first ? ` from ${clock(from, setting)}` : '';
  const said = sameTimes(variant.outlook, standing) ? 'no change' : `${times(variant.outlook, true, setting)}${condition(variant, first, setting)}`;
  return `${nameOf(variant, setting)}${since}: ${said}${unread(variant)}.`;
}

/** `Lamp 40 °C, air 30 °C`. */
function nameOf({ supposed, air }: Variant, setting: Setting): string {
  const heat = supposed === null ? [] : [`${supposed.kind === 'recipe' ? 'recipe, ' : ''}${heatName(supposed, setting)}`];
  return capital([...heat, ...(air === null ? [] : [`air ${degrees(air, setting)}`])].join(', '));
}

/** What has to be seen before it would be true. */
function condition({ supposed, readAt }: Variant, first: boolean, setting: Setting): string {
  if (supposed?.kind === 'recipe') return supposed.stages.length > 1 ? ', each stage after its check' : '';
  if (supposed?.kind !== 'heater' || readAt === null) return '';
  return `, if a reading shows ${first ? degrees(supposed.setting, setting) : 'it'} by ${clock(readAt, setting)}`;
}

/** Heat that nobody can read in time counts nothing. */
const unread = ({ supposed, readAt, outlook }: Variant): string =>
  supposed?.kind === 'heater' && readAt === null && needsReading(outlook.cure) ? ', too late for a reading' : '';

/** `handling 14:45, full **15:40**`, for what still waits; `far`: how far it gets, where it does not end. */
function times(outlook: Outlook, far: boolean, setting: Setting): string {
  const waiting = waitingMilestones(outlook);
  const reach = (one: MilestoneOutlook): string | null => (far ? reached(one, setting) : null);
  if (waiting.length > 1 && waiting.every((one) => one.check.dueAt === null && reach(one) === null)) return '**no time yet**';
  const words = waiting.map((one, index) => `${shortName(one)} ${timeOf(one, reach(one), index === waiting.length - 1, setting)}`);
  return words.length === 0 ? 'nothing waits' : words.join(', ');
}

function timeOf({ check: { dueAt } }: MilestoneOutlook, reach: string | null, last: boolean, setting: Setting): string {
  if (dueAt === null) return reach === null ? '**no time yet**' : `**no time yet**, ${reach}`;
  const said = last ? `**${clock(dueAt, setting)}**` : clock(dueAt, setting);
  return dueAt <= setting.now ? `due since ${said}` : said;
}

/** `53 % of the wait by 17:00`, the moment at which the counting ends; less than one percent is nothing. */
function reached({ forecast }: MilestoneOutlook, setting: Setting): string | null {
  const ends = forecast.laws.flatMap((law) => law.pieces).flatMap(({ wholeMinutes, to }) => (wholeMinutes === null || to === null ? [] : [to]));
  const [first, ...others] = ends;
  if (first === undefined) return null;
  const end = others.reduce((one, other) => later(one, other), first);
  const share = milestoneShare(forecast, end);
  return share < 0.01 ? null : `${percent(share)} by ${clock(end, setting)}`;
}

const shortName = ({ kind }: MilestoneOutlook): string => MILESTONE_WORDS[kind].replace(/ (?:strength|time)$/, '');

/** The heat asked for can be noted at once, if it is meant for now. */
function buttonsFor({ standing, asked, closedAt, from }: WhatIf, setting: Setting): Button[] {
  if (asked?.supposed?.kind !== 'heater' || closedAt !== null || from !== setting.now || sameTimes(asked.outlook, standing)) return [];
  const { heater, setting: heat } = asked.supposed;
  const { job, ref } = standing.cure;
  const when = { earliest: from, latest: from, stated: false, confirmed: false };
  return [button(`${capital(heater)} ${degrees(heat, setting)}`, lineOf({ kind: 'lamp', job, joint: ref.joint, setting: typed(heat, setting), heater, lamp: null, when }))];
}

/** A setting as this shop's people type it. */
const typed = (value: Celsius, { shop }: Setting): TypedTemperature =>
  shop.unit === 'F' ? { value: Number(tidy((value * 9) / 5 + 32)), unit: 'F' } : { value, unit: 'C' };

/** Why nothing could be supposed. */
export function composeWhatIfRefusal(refusal: WhatIfRefusal, setting: Setting): Answer {
  switch (refusal.code) {
    case 'supposed-over-maximum':
      return answer('refusal', [`${degrees(refusal.value, setting)} is over the maximum of ${refusal.card} (**${degrees(refusal.maximum, setting)}**). Ask for less. Nothing is stored.`]);
    case 'supposed-below-recipe':
      return answer('refusal', [`Lamp ${degrees(refusal.value, setting)} counts nothing: the recipe of ${refusal.card} begins at **${degrees(refusal.coldest, setting)}**. Nothing is stored.`]);
    case 'supposed-pad-on-recipe':
      return answer('refusal', [`A pad runs no lamp recipe, so ${refusal.card} has no time for it. Ask with a lamp. Nothing is stored.`]);
    default:
      return composeRefusal(refusal, setting);
  }
}
