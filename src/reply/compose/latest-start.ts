import { DateTime } from 'luxon';
import type { Celsius, Instant } from '../../cure/units.js';
import { FIRST_JOINT } from '../../repair/ids.js';
import type { LatestStart, LatestStartResult, StartChoice } from '../../repair/latest-start.js';
import type { Answer } from '../answer.js';
import { sayLatestStart } from '../catalogue/latest-start.js';
import { languageOf, LOCALES } from '../catalogue/speaker.js';
import { heatName } from './heat-name.js';
import { composeRefusal } from './refusal.js';
import { exampleNote, markedExample } from './state.js';
import { answer, capital, clock, degrees, milestoneWord, type Setting } from './words.js';

/** Until when a joint can be closed: the best way first, then every other one on a line of its own. */
export function composeLatestStart(plan: LatestStart, reader: Setting): Answer {
  const { planned, readyBy } = plan;
  const setting: Setting = momentsOf(plan).some((at) => dayOf(at, reader) !== dayOf(reader.now, reader)) ? { ...reader, withDays: true } : reader;
  const best = bestOf(plan.choices, setting.now);
  const others = [...plan.choices].reverse().filter((one) => one !== best).map((one) => choiceLine(one, setting));
  const rest = best === null ? [] : [...others, heatLine(plan.choices, setting)];
  const lines = [headLine(plan, best, setting), ...rest, holidayLine(readyBy, setting), exampleNote(planned.card, setting)];
  return answer(readyBy <= setting.now ? 'refusal' : 'plain', lines);
}

const momentsOf = ({ readyBy, choices }: LatestStart): Instant[] => [readyBy, ...choices.flatMap(({ latest, late }) => [...(latest === null ? [] : [latest]), ...(late?.due == null ? [] : [late.due])])];

const dayOf = (at: Instant, { shop }: Setting): string | null => DateTime.fromMillis(at, { zone: shop.zone }).toISODate();

/** Whoever plans for a day on which nobody is there. */
function holidayLine(readyBy: Instant, setting: Setting): string | null {
  const day = dayOf(readyBy, setting);
  if (!setting.shop.holidays.some((holiday) => holiday === day)) return null;
  const said = DateTime.fromMillis(readyBy, { zone: setting.shop.zone, locale: LOCALES[languageOf(setting)] }).toFormat('ccc d LLL');
  return sayLatestStart(setting, 'holiday', { day: said });
}

/** The way that leaves most time; where none is left, the one that is due first. */
function bestOf(choices: readonly StartChoice[], now: Instant): StartChoice | null {
  const inTime = choices.filter((one) => one.latest !== null && one.latest >= now);
  if (inTime.length > 0) return inTime.reduce((one, other) => ((other.latest ?? 0) > (one.latest ?? 0) ? other : one));
  const late = choices.filter((one) => one.late?.due != null);
  return late.length === 0 ? null : late.reduce((one, other) => ((other.late?.due ?? 0) < (one.late?.due ?? 0) ? other : one));
}

function headLine(plan: LatestStart, best: StartChoice | null, setting: Setting): string {
  const { planned, milestone, readyBy } = plan;
  const { job, joint, card } = planned;
  const about = { subject: `${joint === FIRST_JOINT ? job : `${job} ${joint}`} ${card.name}`, milestone: milestoneWord(milestone, setting) };
  if (best === null) return sayLatestStart(setting, withoutTime(card.basis, planned.depthMillimetres), about);
  const values = { ...about, by: clock(readyBy, setting), heat: withHeat(best, plan, setting), mornings: mornings(best.eachMorning, setting) };
  if (best.late === null && best.latest !== null) return sayLatestStart(setting, 'plan', { ...values, latest: clock(best.latest, setting) });
  const late = readyBy <= setting.now ? 'past' : 'late';
  return sayLatestStart(setting, `${late}-${closedWhen(best, setting)}`, { ...values, ...lateValues(best, setting) });
}

/** What the sheet's figure cannot do without. */
function withoutTime(basis: LatestStart['planned']['card']['basis'], depth: number | null): 'no-time' | 'no-time-depth' | 'no-time-humidity' {
  if (basis !== 'depth') return 'no-time';
  return depth === null ? 'no-time-depth' : 'no-time-humidity';
}

/** `Lamp 65 °C: close by **Fri 13:25**.` */
function choiceLine(one: StartChoice, setting: Setting): string {
  const values = { heat: capital(heatName(one.heat, setting)), latest: one.latest === null ? '' : clock(one.latest, setting), mornings: mornings(one.eachMorning, setting) };
  if (one.late === null && one.latest !== null) return sayLatestStart(setting, 'close-by', values);
  if (one.late?.due == null) return sayLatestStart(setting, one.latest === null ? 'no-sheet-time' : 'too-late', values);
  const was = one.latest === null ? 'choice-late' : 'choice-past';
  return sayLatestStart(setting, `${was}-${closedWhen(one, setting)}`, { ...values, ...lateValues(one, setting) });
}

const closedWhen = ({ late }: StartChoice, { now }: Setting): 'now' | 'then' => (late === null || late.closed - now < 60_000 ? 'now' : 'then');

const lateValues = ({ late }: StartChoice, setting: Setting): { readonly closed: string; readonly due: string } => ({ closed: late === null ? '' : clock(late.closed, setting), due: late?.due == null ? '–' : clock(late.due, setting) });

/** Where the card knows no heat nothing has to be said about it. */
function withHeat(one: StartChoice, { choices }: LatestStart, setting: Setting): string {
  if (one.heat.kind !== 'air') return sayLatestStart(setting, 'with-heat', { heat: heatName(one.heat, setting) });
  return choices.length > 1 ? sayLatestStart(setting, 'without-heat') : '';
}

const mornings = (air: Celsius | null, setting: Setting): string => (air === null ? '' : sayLatestStart(setting, 'mornings', { air: degrees(air, setting) }));

/** Under which conditions heat would do that. */
function heatLine(choices: readonly StartChoice[], setting: Setting): string | null {
  if (choices.some(({ heat }) => heat.kind === 'heater')) return sayLatestStart(setting, 'take-a-reading', { minutes: setting.shop.rhythm.readingDue });
  const recipe = choices.flatMap(({ heat }) => (heat.kind === 'recipe' ? [heat] : []))[0];
  return recipe === undefined ? null : sayLatestStart(setting, recipe.stages.length > 1 ? 'check-stages' : 'off-at-closing');
}

/** Why there is no plan. */
export function composeLatestStartRefusal(refusal: Extract<LatestStartResult, { readonly ok: false }>['refusal'], setting: Setting): Answer {
  if (refusal.code !== 'no-such-milestone') return composeRefusal(refusal, setting);
  const stated = refusal.card.milestones.map((rule) => milestoneWord(rule.kind, setting)).join(', ');
  return markedExample(answer('refusal', [sayLatestStart(setting, 'no-such-milestone', { card: refusal.card.name, milestone: milestoneWord(refusal.milestone, setting), stated })]), [refusal.card], setting);
}
