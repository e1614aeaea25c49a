import { milestoneShare } from '../../cure/forecast.js';
import { later, type Celsius, type Instant } from '../../cure/units.js';
import type { TypedTemperature } from '../../repair/commands.js';
import { lineOf } from '../../repair/line-of.js';
import { currentMilestone, holdOf, needsReading, waitingMilestones, type MilestoneOutlook, type Outlook } from '../../repair/outlook.js';
import { sameTimes, type Variant, type WhatIf } from '../../repair/what-if.js';
import type { WhatIfRefusal } from '../../repair/what-if-refusal.js';
import type { Answer, Button } from '../answer.js';
import { sayShortName } from '../catalogue/short-names.js';
import { sayWhatIf } from '../catalogue/what-if.js';
import { heatName } from './heat-name.js';
import { composeRefusal } from './refusal.js';
import { exampleNote, title } from './state.js';
import { answer, button, capital, clock, degrees, percent, tidy, type Setting } from './words.js';

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
  const values = { job: title(standing), times: times(standing, false, setting) };
  const held = isHeld(standing, setting);
  if (closedAt === null) return sayWhatIf(setting, held ? 'head-held' : 'head', values);
  return sayWhatIf(setting, held ? 'head-closed-held' : 'head-closed', { ...values, at: clock(closedAt, setting) });
}

function aloneLine({ alone, from }: WhatIf, setting: Setting): string | null {
  if (alone === null) return null;
  return alone > from ? sayWhatIf(setting, 'alone-after', { at: clock(alone, setting) }) : sayWhatIf(setting, 'alone-closed');
}

function isHeld(standing: Outlook, { now }: Setting): boolean {
  const current = currentMilestone(standing, now);
  return current !== null && holdOf(standing, current) !== null;
}

/** `Lamp 65 °C from 14:00: handling 14:45, full **15:40**, if a reading shows 65 °C by 14:20.` */
function variantLine(variant: Variant, { from, standing, asked }: WhatIf, setting: Setting): string {
  const first = variant === asked;
  const said = sameTimes(variant.outlook, standing) ? sayWhatIf(setting, 'no-change') : withCondition(times(variant.outlook, true, setting), variant, first, setting);
  const values = { heat: nameOf(variant, setting), said: isUnread(variant) ? sayWhatIf(setting, 'too-late', { said }) : said };
  return first ? sayWhatIf(setting, 'variant-from', { ...values, at: clock(from, setting) }) : sayWhatIf(setting, 'variant', values);
}

/** `Lamp 40 °C, air 30 °C`. */
function nameOf({ supposed, air }: Variant, setting: Setting): string {
  const heat = supposed === null ? null : heatName(supposed, setting);
  const named = heat === null ? [] : [supposed?.kind === 'recipe' ? sayWhatIf(setting, 'recipe', { heat }) : heat];
  return capital([...named, ...(air === null ? [] : [sayWhatIf(setting, 'air', { value: degrees(air, setting) })])].join(', '));
}

/** What has to be seen before it would be true. */
function withCondition(said: string, { supposed, readAt }: Variant, first: boolean, setting: Setting): string {
  if (supposed?.kind === 'recipe') return supposed.stages.length > 1 ? sayWhatIf(setting, 'each-stage', { said }) : said;
  if (supposed?.kind !== 'heater' || readAt === null) return said;
  const values = { said, at: clock(readAt, setting) };
  return first ? sayWhatIf(setting, 'if-shown', { ...values, value: degrees(supposed.setting, setting) }) : sayWhatIf(setting, 'if-shown-it', values);
}

/** Heat that nobody can read in time counts nothing. */
const isUnread = ({ supposed, readAt, outlook }: Variant): boolean => supposed?.kind === 'heater' && readAt === null && needsReading(outlook.cure);

/** `handling 14:45, full **15:40**`, for what still waits; `far`: how far it gets, where it does not end. */
function times(outlook: Outlook, far: boolean, setting: Setting): string {
  const waiting = waitingMilestones(outlook);
  const reach = (one: MilestoneOutlook): Reach | null => (far ? reached(one) : null);
  if (waiting.length > 1 && waiting.every((one) => one.check.dueAt === null && reach(one) === null)) return sayWhatIf(setting, 'no-time');
  const words = waiting.map((one, index) => `${sayShortName(setting, one.kind)} ${timeOf(one, reach(one), index === waiting.length - 1, setting)}`);
  return words.length === 0 ? sayWhatIf(setting, 'nothing-waits') : words.join(', ');
}

/** How far it gets, and the moment at which the counting ends. */
interface Reach {
  readonly share: number;
  readonly end: Instant;
}

function timeOf({ check: { dueAt } }: MilestoneOutlook, reach: Reach | null, last: boolean, setting: Setting): string {
  if (dueAt === null) return reach === null ? sayWhatIf(setting, 'no-time') : sayWhatIf(setting, 'no-time-reached', { share: percent(reach.share, setting), at: clock(reach.end, setting) });
  const said = last ? `**${clock(dueAt, setting)}**` : clock(dueAt, setting);
  return dueAt <= setting.now ? sayWhatIf(setting, 'due-since', { at: said }) : said;
}

/** `53 % of the wait by 17:00`; less than one percent is nothing. */
function reached({ forecast }: MilestoneOutlook): Reach | null {
  const ends = forecast.laws.flatMap((law) => law.pieces).flatMap(({ wholeMinutes, to }) => (wholeMinutes === null || to === null ? [] : [to]));
  const [first, ...others] = ends;
  if (first === undefined) return null;
  const end = others.reduce((one, other) => later(one, other), first);
  const share = milestoneShare(forecast, end);
  return share < 0.01 ? null : { share, end };
}

/** The heat asked for can be noted at once, if it is meant for now. */
function buttonsFor({ standing, asked, closedAt, from }: WhatIf, setting: Setting): Button[] {
  if (asked?.supposed?.kind !== 'heater' || closedAt !== null || from !== setting.now || sameTimes(asked.outlook, standing)) return [];
  const { heater, setting: heat } = asked.supposed;
  const { job, ref } = standing.cure;
  const when = { earliest: from, latest: from, stated: false, confirmed: false };
  return [button(capital(heatName(asked.supposed, setting)), lineOf({ kind: 'lamp', job, joint: ref.joint, setting: typed(heat, setting), heater, lamp: null, when }))];
}

/** A setting as this shop's people type it. */
const typed = (value: Celsius, { shop }: Setting): TypedTemperature =>
  shop.unit === 'F' ? { value: Number(tidy((value * 9) / 5 + 32)), unit: 'F' } : { value, unit: 'C' };

/** Why nothing could be supposed. */
export function composeWhatIfRefusal(refusal: WhatIfRefusal, setting: Setting): Answer {
  switch (refusal.code) {
    case 'supposed-over-maximum':
      return answer('refusal', [sayWhatIf(setting, 'over-maximum', { value: degrees(refusal.value, setting), card: refusal.card, maximum: degrees(refusal.maximum, setting) })]);
    case 'supposed-below-recipe':
      return answer('refusal', [sayWhatIf(setting, 'below-recipe', { value: degrees(refusal.value, setting), card: refusal.card, coldest: degrees(refusal.coldest, setting) })]);
    case 'supposed-pad-on-recipe':
      return answer('refusal', [sayWhatIf(setting, 'pad-on-recipe', { card: refusal.card })]);
    default:
      return composeRefusal(refusal, setting);
  }
}
