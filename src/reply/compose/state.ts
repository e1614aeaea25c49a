import type { AirSource } from '../../cure/air.js';
import { coldestRow } from '../../cure/rows.js';
import { minutesBetween, type Celsius, type Instant } from '../../cure/units.js';
import type { MaterialCard, RateLaw } from '../../cure/card.js';
import { FIRST_JOINT } from '../../repair/ids.js';
import type { Cure } from '../../repair/job.js';
import { depthMissing, heatAt, holdOf, shareOf, stateOf, type Hold, type MilestoneOutlook, type Outlook } from '../../repair/outlook.js';
import { nameOf } from '../../repair/people.js';
import type { Piece } from '../../cure/progress.js';
import { button, capital, clock, degrees, MILESTONE_WORDS, percent, text, type Setting } from './words.js';
import type { Answer, Button } from '../answer.js';

/** `501`, or `501 j2` where it is not the first joint. */
export const title = ({ cure }: Outlook): string => (cure.ref.joint === FIRST_JOINT ? cure.job : `${cure.job} ${cure.ref.joint}`);

/** The words a line needs to mean this cure. */
export const aimed = ({ cure }: Outlook): string => `${cure.job} ${cure.ref.joint}`;

/** Said with every answer that rests on a card that only comes with the program. */
export const exampleNote = (card: MaterialCard): string | null =>
  card.example ? `${card.name} is an example card, not your data sheet.` : null;

/** The same for an answer that has not said it yet. */
export function markedExample(said: Answer, cards: readonly MaterialCard[]): Answer {
  const names = [...new Set(cards.filter((card) => card.example).map((card) => card.name))];
  const note = names.length === 1 ? `${names.join()} is an example card, not your data sheet.` : `${names.slice(0, 4).join(', ')} are example cards, not your data sheets.`;
  const missing = names.length > 0 && !said.lines.some((one) => one.some((span) => span.text.includes('example card')));
  return missing ? { ...said, lines: [...said.lines, [text(note)]] } : said;
}

/** The stretch that counts, or would count, at a moment. */
export const pieceAt = (one: MilestoneOutlook, at: Instant): Piece | null => one.forecast.progress.pieces.filter((piece) => piece.from <= at).at(-1) ?? null;

/** The four grades of certainty, always in the same words. */
export function certainty(outlook: Outlook, one: MilestoneOutlook, setting: Setting): string {
  const { now, shop } = setting;
  const heat = heatAt(outlook, now);
  if (heat.lamp === 'on' && heat.lastSign !== null && minutesBetween(heat.lastSign, now) > shop.rhythm.stillOn) {
    return `by the clock, not confirmed since ${clock(heat.lastSign, setting)}`;
  }
  const piece = pieceAt(one, now);
  if (byMoisture(one) && waterIsAssumed(outlook, one, now)) return 'earliest';
  return piece?.source === 'usual air' || piece?.source === 'old air reading' ? 'earliest' : 'by the clock';
}

/** The water in the air is counted on from its last reading, which after some hours nobody vouches for. */
const waterIsAssumed = ({ air }: Outlook, one: MilestoneOutlook, now: Instant): boolean => {
  const due = one.check.dueAt;
  return air.some((step, index) => step.source !== 'air reading' && (air[index + 1]?.from ?? Infinity) > now && (due === null || step.from < due));
};

const byMoisture = (one: MilestoneOutlook): boolean => one.forecast.progress.law === 'table' || one.forecast.progress.law === 'depth-root';

/** Why a foreman has to decide. */
export const HOLD_WORDS: Readonly<Record<Hold, string>> = {
  smoke: 'smoke reported',
  'over-maximum': 'too hot',
  'open-limit': 'open limit was passed',
  dew: 'metal too close to the dew point',
  'two-answers': 'two answers, held as soft',
  'soft-twice': 'soft twice',
  earlier: 'the check before it is not settled',
};

/** One milestone in one sentence: state, one time. */
export function milestoneSentence(outlook: Outlook, one: MilestoneOutlook, setting: Setting): string {
  const { now, shop } = setting;
  const name = MILESTONE_WORDS[one.kind];
  const due = one.check.dueAt;
  switch (stateOf(outlook, one, now)) {
    case 'confirmed': {
      const said = outlook.milestones.map((other) => other.check).findLast((check) => check.phase === 'confirmed')?.answer;
      return said == null ? `${name} confirmed` : `${name} confirmed ${clock(said.at, setting)} by ${nameOf(shop, said.by)}`;
    }
    case 'held':
      return `${name} ${due === null ? '' : `**${clock(due, setting)}** `}**HELD**, ${HOLD_WORDS[holdOf(outlook, one) ?? 'earlier']}`;
    case 'due':
      return due === null ? name : `${name} **due since ${clock(due, setting)}**, check it`;
    case 'running':
      return due === null ? willSleep(outlook, one, setting) : `${name} ${dueWords(outlook, one, due, setting)}`;
    case 'asleep':
      return `${name} ${asleep(outlook, one, setting)}`;
  }
}

function dueWords(outlook: Outlook, one: MilestoneOutlook, due: Instant, setting: Setting): string {
  if (one.check.round > 1) return `soft, check again **${clock(due, setting)}**`;
  const grade = certainty(outlook, one, setting);
  return grade === 'earliest' ? `earliest **${clock(due, setting)}**, likely later` : `**${clock(due, setting)}** ${grade}`;
}

/** It counts now, and will stop before it is done. */
function willSleep(outlook: Outlook, one: MilestoneOutlook, setting: Setting): string {
  const ends = one.forecast.laws.flatMap((law) => law.pieces).filter((piece) => piece.wholeMinutes !== null && piece.to !== null && piece.to > setting.now);
  const end = ends.at(-1)?.to;
  const name = MILESTONE_WORDS[one.kind];
  const next = stageWaitedFor(outlook);
  if (next !== null) return `${name} waits for lamp **${degrees(next, setting)}**`;
  if (end == null) return `${name} **no time in sight**`;
  return `${name}: no time yet, ${percent(shareOf(one, end))} by ${clock(end, setting)}, then it ${stopsFor(outlook, one)}`;
}

/** The setting of the stage to be turned up to: the one before is over, this one has not begun. */
function stageWaitedFor({ stages }: Outlook): Celsius | null {
  const index = stages.findIndex((run) => run.began === null);
  return index > 0 && stages[index - 1]?.ended != null ? (stages[index]?.stage.lamp ?? null) : null;
}

/** Moisture hardens nothing that nobody knows the humidity of. */
function stopsFor(outlook: Outlook, { forecast }: MilestoneOutlook): string {
  if (forecast.progress.law === 'depth-root') return 'waits for the air with humidity';
  return outlook.heat.lamp === 'on' ? 'waits for the lamp' : 'sleeps (too cold)';
}

/** A depth that nobody said has no time. */
export const NO_DEPTH = '**no time**: say the bead\'s depth';

/** Why nothing counts, and how far it is. */
export function asleep(outlook: Outlook, one: MilestoneOutlook, setting: Setting): string {
  const laws = outlook.cure.card.milestones.find((rule) => rule.kind === one.kind)?.laws ?? [];
  const share = percent(shareOf(one, setting.now));
  if (pieceAt(one, setting.now)?.source === 'over the maximum') return `**nothing counts** until a new reading, ${share}`;
  if (depthMissing(outlook) && laws.some((law) => law.law === 'depth-root')) return NO_DEPTH;
  const recipe = laws.some((law) => law.law === 'recipe');
  const needs = needed(laws);
  if (recipe && needs === null) return outlook.heat.lamp === 'never' ? '**no sheet time** without the lamp' : `**waits for the lamp**, ${share}`;
  if (laws.some((law) => law.law === 'dwell')) return `**waits for a metal reading**, ${share}`;
  if (laws.some((law) => law.law === 'table' || law.law === 'depth-root')) return '**no time**: type the air with humidity, like `air 20 rh 50`';
  if (needs === null) return `**no sheet time**`;
  return `**asleep, too cold** (needs ${degrees(needs, setting)}), ${share}${recipe ? '; or the lamp' : ''}`;
}

function needed(laws: readonly RateLaw[]): Celsius | null {
  return laws.flatMap((law) => (law.law === 'credit' ? (coldestRow(law.rows) ?? []) : law.law === 'above' ? [law.temperature] : [])).at(0) ?? null;
}

/** `lamp A`, `pad 1`, or only which of the two it is. */
export const heaterWord = ({ heater, lamp }: Pick<Cure, 'heater' | 'lamp'>): string => (lamp === null ? heater : `${heater} ${lamp}`);

export const offButton = (outlook: Outlook): Button => button(`${capital(outlook.cure.heater)} off`, `off ${aimed(outlook)}`);

/** Air that nobody read and nobody is there for has a name of its own. */
const AIR_WORDS: Readonly<Partial<Record<AirSource, string>>> = { 'night setting': 'night', 'closed days': 'closed days' };

/** What heats the joint now, in a few words. */
export function heatWords(outlook: Outlook, setting: Setting): string {
  const { cure, air } = outlook;
  const heat = heatAt(outlook, setting.now);
  const lamp = heaterWord(cure);
  if (heat.lamp === 'on') return heat.setting === null ? `${lamp} on` : `${lamp} ${degrees(heat.setting, setting)}`;
  if (heat.counted !== null) return `joint read ${degrees(heat.counted, setting)}`;
  const step = air.filter((one) => one.from <= setting.now).at(-1);
  const around = step?.temperature == null ? 'air not known' : `${AIR_WORDS[step.source] ?? 'air'} ${degrees(step.temperature, setting)}`;
  if (heat.lamp === 'never') return around;
  return heat.lamp === 'off' ? `${lamp} off, ${around}` : `${lamp} not seen on, ${around}`;
}
