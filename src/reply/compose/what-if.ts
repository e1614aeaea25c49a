import { milestoneShare } from '../../cure/forecast.js';
import type { Celsius, Instant } from '../../cure/units.js';
import type { TypedTemperature } from '../../repair/commands.js';
import { lineOf } from '../../repair/line-of.js';
import { currentMilestone, holdOf, needsReading, waitingMilestones, type MilestoneOutlook, type Outlook } from '../../repair/outlook.js';
import { sameTimes, type Variant, type WhatIf } from '../../repair/what-if.js';
import type { WhatIfRefusal } from '../../repair/what-if-refusal.js';
import type { Answer, Button } from '../answer.js';
import { composeRefusal } from './refusal.js';
import { exampleNote, title } from './state.js';
import { answer, button, capital, clock, degrees, MILESTONE_WORDS, percent, tidy, type Setting } from './words.js';

/** A phone shows so many lines without scrolling. */
const MOST_LINES = 6;

/** What the book says, and beside it what would come of other heat: a supposition is never mistaken for the book. */
export function composeWhatIf(whatIf: WhatIf, setting: Setting): Answer {
  const { standing, asked, others, air, alone } = whatIf;
  const note = exampleNote(standing.cure.card);
  const first = [headLine(whatIf, setting), ...(asked === null ? [] : [variantLine(asked, whatIf, setting)])];
  const last = [air, alone, note].filter((one) => one !== null).length;
  const between = others.slice(0, Math.max(0, MOST_LINES - first.length - last)).map((one) => variantLine(one, whatIf, setting));
  const tail = [air === null ? null : variantLine(air, whatIf, setting), aloneLine(whatIf, setting), note];
  return answer('plain', [...first, ...between, ...tail], buttonsFor(whatIf, setting));
}

function headLine({ standing, closedAt }: WhatIf, setting: Setting): string {
  const held = holdWords(standing, setting);
  const closed = closedAt === null ? 'as it stands' : `if closed ${clock(closedAt, setting)}`;
  return `${title(standing)} what if, nothing is stored. ${held}${capital(closed)}: ${times(standing, null, setting)}.`;
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
  const said = sameTimes(variant.outlook, standing) ? 'no change' : `${times(variant.outlook, heatStops(variant), setting)}${condition(variant, first, setting)}`;
  return `${nameOf(variant, setting)}${since}: ${said}${unread(variant)}.`;
}

/** The moment by which heat has done what it can, for a wait that does not end. */
const heatStops = ({ outlook }: Variant): Instant | null => outlook.history?.heat.findLast((event) => event.kind === 'closing')?.at ?? null;

function nameOf({ supposed }: Variant, setting: Setting): string {
  switch (supposed.kind) {
    case 'air':
      return 'Air only';
    case 'other-air':
      return `Air ${degrees(supposed.value, setting)}`;
    case 'heater':
      return `${capital(supposed.heater)} ${degrees(supposed.setting, setting)}`;
    case 'recipe':
      return `Recipe, lamp ${supposed.stages.map((stage) => degrees(stage.lamp, setting)).join(' then ')}`;
  }
}

/** What has to be seen before it would be true. */
function condition({ supposed, readAt }: Variant, first: boolean, setting: Setting): string {
  if (supposed.kind === 'recipe') return supposed.stages.length > 1 ? ', each stage after its check' : '';
  if (supposed.kind !== 'heater' || readAt === null) return '';
  return `, if a reading shows ${first ? degrees(supposed.setting, setting) : 'it'} by ${clock(readAt, setting)}`;
}

/** Heat that nobody can read in time counts nothing. */
const unread = ({ supposed, readAt, outlook }: Variant): string =>
  supposed.kind === 'heater' && readAt === null && needsReading(outlook.cure) ? ', too late for a reading' : '';

/** `handling 14:45, full **15:40**`, for what still waits. */
function times(outlook: Outlook, stops: Instant | null, setting: Setting): string {
  const waiting = waitingMilestones(outlook);
  if (waiting.length > 1 && waiting.every((one) => one.check.dueAt === null && shareBy(one, stops) === null)) return '**no time yet**';
  const words = waiting.map((one, index) => `${shortName(one)} ${timeOf(one, stops, index === waiting.length - 1, setting)}`);
  return words.length === 0 ? 'nothing waits' : words.join(', ');
}

function timeOf(one: MilestoneOutlook, stops: Instant | null, last: boolean, setting: Setting): string {
  const { dueAt } = one.check;
  const share = shareBy(one, stops);
  if (dueAt === null) return stops === null || share === null ? '**no time yet**' : `**no time yet**, ${percent(share)} by ${clock(stops, setting)}`;
  const said = last ? `**${clock(dueAt, setting)}**` : clock(dueAt, setting);
  return dueAt <= setting.now ? `due since ${said}` : said;
}

/** How far it gets before the heat stops; less than one percent is nothing. */
function shareBy({ forecast }: MilestoneOutlook, stops: Instant | null): number | null {
  const share = stops === null ? 0 : milestoneShare(forecast, stops);
  return share < 0.01 ? null : share;
}

const shortName = ({ kind }: MilestoneOutlook): string => MILESTONE_WORDS[kind].replace(/ (?:strength|time)$/, '');

/** The heat asked for can be noted at once, if it is meant for now. */
function buttonsFor({ standing, asked, closedAt, from }: WhatIf, setting: Setting): Button[] {
  if (asked?.supposed.kind !== 'heater' || closedAt !== null || from !== setting.now || sameTimes(asked.outlook, standing)) return [];
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
