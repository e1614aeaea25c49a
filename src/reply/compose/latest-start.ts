import type { Celsius, Instant } from '../../cure/units.js';
import { FIRST_JOINT } from '../../repair/ids.js';
import type { LatestStart, LatestStartResult, StartChoice } from '../../repair/latest-start.js';
import type { Answer } from '../answer.js';
import { heatName } from './heat-name.js';
import { composeRefusal } from './refusal.js';
import { exampleNote, markedExample } from './state.js';
import { answer, capital, clock, degrees, MILESTONE_WORDS, type Setting } from './words.js';

/** Until when a joint can be closed: the best way first, then every other one on a line of its own. */
export function composeLatestStart(plan: LatestStart, setting: Setting): Answer {
  const { planned, readyBy } = plan;
  const best = bestOf(plan.choices, setting.now);
  const others = [...plan.choices].reverse().filter((one) => one !== best).map((one) => choiceLine(one, setting));
  const rest = best === null ? [] : [...others, heatLine(plan.choices, setting)];
  const lines = [headLine(plan, best, setting), ...rest, exampleNote(planned.card, setting)];
  return answer(readyBy <= setting.now ? 'refusal' : 'plain', lines);
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
  const subject = `${joint === FIRST_JOINT ? job : `${job} ${joint}`} ${card.name}`;
  const name = MILESTONE_WORDS[milestone];
  const by = clock(readyBy, setting);
  if (best === null) return `${subject}: **no sheet time** for ${name}${missing(planned.card.basis, planned.depthMillimetres)}.`;
  if (best.late === null && best.latest !== null) return `${subject} plan, nothing is stored: ${name} by ${by} if closed by **${clock(best.latest, setting)}**${withHeat(best, plan, setting)}${mornings(best.eachMorning, setting)}.`;
  const late = readyBy <= setting.now ? `${by} is past` : `**too late** for ${name} by ${by}`;
  return `${subject}: ${late}. ${closedThen(best, setting)}${withHeat(best, plan, setting)} it is due **${dueOf(best, setting)}**${mornings(best.eachMorning, setting)}.`;
}

/** What the sheet's figure cannot do without. */
function missing(basis: LatestStart['planned']['card']['basis'], depth: number | null): string {
  if (basis !== 'depth') return '';
  return depth === null ? ': say how deep the bead is, like `3 mm`' : ': type the air with humidity, like `air 20 rh 50`';
}

/** `Lamp 65 °C: close by **Fri 13:25**.` */
function choiceLine(one: StartChoice, setting: Setting): string {
  const name = capital(heatName(one.heat, setting));
  if (one.late === null && one.latest !== null) return `${name}: close by **${clock(one.latest, setting)}**${mornings(one.eachMorning, setting)}.`;
  if (one.late?.due == null) return one.latest === null ? `${name}: **no sheet time**.` : `${name}: too late (${clock(one.latest, setting)}).`;
  const was = one.latest === null ? 'too late' : `too late (${clock(one.latest, setting)})`;
  return `${name}: ${was}; ${closedThen(one, setting).toLowerCase()} due ${dueOf(one, setting)}${mornings(one.eachMorning, setting)}.`;
}

const closedThen = ({ late }: StartChoice, setting: Setting): string =>
  late === null || late.closed - setting.now < 60_000 ? 'Closed now' : `Closed ${clock(late.closed, setting)}`;

const dueOf = ({ late }: StartChoice, setting: Setting): string => (late?.due == null ? 'never' : clock(late.due, setting));

/** Where the card knows no heat nothing has to be said about it. */
function withHeat(one: StartChoice, { choices }: LatestStart, setting: Setting): string {
  if (one.heat.kind !== 'air') return ` with ${heatName(one.heat, setting)}`;
  return choices.length > 1 ? ' without heat' : '';
}

const mornings = (air: Celsius | null, setting: Setting): string => (air === null ? '' : `, if each morning's air reads ${degrees(air, setting)}`);

/** Under which conditions heat would do that. */
function heatLine(choices: readonly StartChoice[], { shop }: Setting): string | null {
  if (choices.some(({ heat }) => heat.kind === 'heater')) return `If it gets there: take a reading within ${shop.rhythm.readingDue} min. No lamp runs alone: off at closing.`;
  const recipe = choices.flatMap(({ heat }) => (heat.kind === 'recipe' ? [heat] : []))[0];
  return recipe === undefined ? null : `${recipe.stages.length > 1 ? 'Check before each next stage. ' : ''}No lamp runs alone: off at closing.`;
}

/** Why there is no plan. */
export function composeLatestStartRefusal(refusal: Extract<LatestStartResult, { readonly ok: false }>['refusal'], setting: Setting): Answer {
  if (refusal.code !== 'no-such-milestone') return composeRefusal(refusal, setting);
  const stated = refusal.card.milestones.map((rule) => MILESTONE_WORDS[rule.kind]).join(', ');
  return markedExample(answer('refusal', [`${refusal.card.name} has **no sheet time** for ${MILESTONE_WORDS[refusal.milestone]}. It states: ${stated}.`]), [refusal.card], setting);
}
