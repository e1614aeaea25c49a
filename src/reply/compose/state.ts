import type { AirStep } from '../../cure/air.js';
import { coldestRow } from '../../cure/rows.js';
import { minutesBetween, type Celsius, type Instant } from '../../cure/units.js';
import type { MaterialCard, RateLaw } from '../../cure/card.js';
import { FIRST_JOINT } from '../../repair/ids.js';
import type { Check, Cure } from '../../repair/job.js';
import { attendantAt, depthMissing, heatAt, holdOf, shareOf, stateOf, type Hold, type MilestoneOutlook, type Outlook } from '../../repair/outlook.js';
import { nameOf } from '../../repair/people.js';
import { isFireWatch } from '../../repair/watch-card.js';
import type { Piece } from '../../cure/progress.js';
import type { Shop } from '../../repair/shop.js';
import type { Answer, Button } from '../answer.js';
import type { Reader } from '../catalogue/speaker.js';
import { sayState } from '../catalogue/state.js';
import { button, capital, clock, degrees, milestoneWord, percent, text, type Setting } from './words.js';

/** `501`, or `501 j2` where it is not the first joint. */
export const title = ({ cure }: Outlook): string => (cure.ref.joint === FIRST_JOINT ? cure.job : `${cure.job} ${cure.ref.joint}`);

/** The words a line needs to mean this cure. */
export const aimed = ({ cure }: Outlook): string => `${cure.job} ${cure.ref.joint}`;

/** Said with every answer that rests on a card that only comes with the program. */
export const exampleNote = (card: MaterialCard, reader: Reader): string | null => (card.example ? sayState(reader, 'example-card', { card: card.name }) : null);

/** The same for an answer that has not said it yet. */
export function markedExample(said: Answer, cards: readonly MaterialCard[], reader: Reader): Answer {
  const names = [...new Set(cards.filter((card) => card.example).map((card) => card.name))];
  const note = names.length === 1 ? sayState(reader, 'example-card', { card: names.join() }) : sayState(reader, 'example-cards', { cards: names.slice(0, 4).join(', ') });
  const notes = names.map((card) => sayState(reader, 'example-card', { card }));
  const missing = names.length > 0 && !said.lines.some((one) => notes.includes(one.map((span) => span.text).join('')));
  return missing ? { ...said, lines: [...said.lines, [text(note)]] } : said;
}

/** The stretch that counts, or would count, at a moment. */
export const pieceAt = (one: MilestoneOutlook, at: Instant): Piece | null => one.forecast.progress.pieces.filter((piece) => piece.from <= at).at(-1) ?? null;

/** How sure a time is: at the earliest then, or by the clock, or by the clock with a lamp nobody has seen for long. */
export function isEarliest(outlook: Outlook, one: MilestoneOutlook, { now, shop }: Setting): boolean {
  if (unseenSince(outlook, now, shop) !== null) return false;
  const piece = pieceAt(one, now);
  if (byMoisture(one) && waterIsAssumed(outlook, one, now)) return true;
  return piece?.source === 'usual air' || piece?.source === 'old air reading';
}

/** The grade of certainty, always in the same words. */
export function certainty(outlook: Outlook, one: MilestoneOutlook, setting: Setting): string {
  const unseen = unseenSince(outlook, setting.now, setting.shop);
  if (unseen !== null) return sayState(setting, 'grade-unconfirmed', { at: clock(unseen, setting) });
  return sayState(setting, isEarliest(outlook, one, setting) ? 'grade-earliest' : 'grade-clock');
}

function unseenSince(outlook: Outlook, now: Instant, shop: Shop): Instant | null {
  const { lamp, lastSign } = heatAt(outlook, now);
  return lamp === 'on' && lastSign !== null && minutesBetween(lastSign, now) > shop.rhythm.stillOn ? lastSign : null;
}

/** The water in the air is counted on from its last reading, which after some hours nobody vouches for. */
const waterIsAssumed = ({ air }: Outlook, one: MilestoneOutlook, now: Instant): boolean => {
  const due = one.check.dueAt;
  return air.some((step, index) => step.source !== 'air reading' && (air[index + 1]?.from ?? Infinity) > now && (due === null || step.from < due));
};

const byMoisture = (one: MilestoneOutlook): boolean => one.forecast.progress.law === 'table' || one.forecast.progress.law === 'depth-root';

/** Why a foreman has to decide. */
export const holdWords = (hold: Hold, reader: Reader): string => sayState(reader, `hold-${hold}`);

/** The same; of two answers that differ, whose they are and from when. */
export function holdReason(hold: Hold, one: MilestoneOutlook, outlook: Outlook, setting: Setting): string {
  const reason = holdWords(hold, setting);
  const answers = hold === 'two-answers' ? answersThatDiffer(outlook, one) : [];
  if (answers.length < 2) return reason;
  return sayState(setting, 'held-by-answers', { reason, answers: answers.map(({ by, at, result }) => sayState(setting, `answer-${result}`, { who: nameOf(setting.shop, by), at: clock(at, setting) })).join(', ') });
}

/** The soft one that counts and the last hard one against it, in the order in which they were given. */
function answersThatDiffer({ cure }: Outlook, { kind, check }: MilestoneOutlook): Check[] {
  const said = cure.checks.filter(({ milestone }) => milestone === kind);
  const other = said.findLast(({ result, by }) => result !== check.answer?.result && by !== check.answer?.by);
  return said.filter((answer) => answer === check.answer || answer === other);
}

/** One milestone in one sentence: state, one time. */
export function milestoneSentence(outlook: Outlook, one: MilestoneOutlook, setting: Setting): string {
  const { now, shop } = setting;
  const milestone = milestoneWord(one.kind, setting);
  const due = one.check.dueAt;
  switch (stateOf(outlook, one, now)) {
    case 'confirmed': {
      const said = outlook.milestones.map((other) => other.check).findLast((check) => check.phase === 'confirmed')?.answer;
      return said == null ? sayState(setting, 'confirmed', { milestone }) : sayState(setting, 'confirmed-by', { milestone, at: clock(said.at, setting), who: nameOf(shop, said.by) });
    }
    case 'held': {
      const reason = holdReason(holdOf(outlook, one) ?? 'earlier', one, outlook, setting);
      return due === null ? sayState(setting, 'held', { milestone, reason }) : sayState(setting, 'held-due', { milestone, at: clock(due, setting), reason });
    }
    case 'due':
      return due === null ? milestone : sayState(setting, 'due-since', { milestone, at: clock(due, setting) });
    case 'running':
      return due === null ? willSleep(outlook, one, setting) : sayState(setting, 'running', { milestone, when: dueWords(outlook, one, due, setting) });
    case 'asleep':
      return sayState(setting, 'running', { milestone, when: asleep(outlook, one, setting) });
  }
}

function dueWords(outlook: Outlook, one: MilestoneOutlook, due: Instant, setting: Setting): string {
  const at = clock(due, setting);
  if (one.check.round > 1) return sayState(setting, 'check-again', { at });
  return isEarliest(outlook, one, setting) ? sayState(setting, 'earliest-at', { at }) : sayState(setting, 'at-grade', { at, grade: certainty(outlook, one, setting) });
}

/** It counts now, and will stop before it is done. */
function willSleep(outlook: Outlook, one: MilestoneOutlook, setting: Setting): string {
  const ends = one.forecast.laws.flatMap((law) => law.pieces).filter((piece) => piece.wholeMinutes !== null && piece.to !== null && piece.to > setting.now);
  const end = ends.at(-1)?.to;
  const milestone = milestoneWord(one.kind, setting);
  const next = stageWaitedFor(outlook);
  if (next !== null) return sayState(setting, 'waits-for-stage', { milestone, setting: degrees(next, setting) });
  if (end == null) return sayState(setting, 'no-time-in-sight', { milestone });
  return sayState(setting, 'stops-at', { milestone, share: percent(shareOf(one, end), setting), at: clock(end, setting), stops: sayState(setting, stopsFor(outlook, one)) });
}

/** The setting of the stage to be turned up to: the one before is over, this one has not begun. */
function stageWaitedFor({ stages }: Outlook): Celsius | null {
  const index = stages.findIndex((run) => run.began === null);
  return index > 0 && stages[index - 1]?.ended != null ? (stages[index]?.stage.lamp ?? null) : null;
}

/** Moisture hardens nothing that nobody knows the humidity of. */
function stopsFor(outlook: Outlook, { forecast }: MilestoneOutlook): 'stops-for-humidity' | 'stops-for-lamp' | 'stops-cold' {
  if (forecast.progress.law === 'depth-root') return 'stops-for-humidity';
  return outlook.heat.lamp === 'on' ? 'stops-for-lamp' : 'stops-cold';
}

/** A depth that nobody said has no time. */
export const noDepth = (reader: Reader): string => sayState(reader, 'no-depth');

/** Why nothing counts, and how far it is. */
export function asleep(outlook: Outlook, one: MilestoneOutlook, setting: Setting): string {
  const laws = outlook.cure.card.milestones.find((rule) => rule.kind === one.kind)?.laws ?? [];
  const share = percent(shareOf(one, setting.now), setting);
  if (pieceAt(one, setting.now)?.source === 'over the maximum') return sayState(setting, 'over-maximum', { share });
  if (depthMissing(outlook) && laws.some((law) => law.law === 'depth-root')) return noDepth(setting);
  const recipe = laws.some((law) => law.law === 'recipe');
  const needs = needed(laws);
  if (recipe && needs === null) return outlook.heat.lamp === 'never' ? sayState(setting, 'no-time-without-lamp') : sayState(setting, 'waits-for-lamp', { share });
  if (laws.some((law) => law.law === 'dwell')) return sayState(setting, 'waits-for-metal', { share });
  if (laws.some((law) => law.law === 'table') && airAt(outlook, setting.now)?.humidity != null) return sayState(setting, 'no-sheet-time-in-air');
  if (laws.some((law) => law.law === 'table' || law.law === 'depth-root')) return sayState(setting, 'needs-humidity');
  if (needs === null) return sayState(setting, 'no-sheet-time');
  return sayState(setting, recipe ? 'too-cold-or-lamp' : 'too-cold', { needs: degrees(needs, setting), share });
}

function needed(laws: readonly RateLaw[]): Celsius | null {
  return laws.flatMap((law) => (law.law === 'credit' ? (coldestRow(law.rows) ?? []) : law.law === 'above' ? [law.temperature] : [])).at(0) ?? null;
}

/** `lamp A`, `pad 1`, or only which of the two it is. */
export const heaterWord = ({ heater, lamp }: Pick<Cure, 'heater' | 'lamp'>, reader: Reader): string =>
  lamp === null ? sayState(reader, heater) : sayState(reader, 'heater-named', { heater: sayState(reader, heater), name: lamp });

export const offButton = (outlook: Outlook, reader: Reader): Button => button(capital(sayState(reader, 'heater-off', { heater: sayState(reader, outlook.cure.heater) })), `off ${aimed(outlook)}`);

/** What heats the joint now, in a few words. */
export function heatWords(outlook: Outlook, setting: Setting): string {
  const { cure } = outlook;
  const heat = heatAt(outlook, setting.now);
  const heater = heaterWord(cure, setting);
  if (heat.lamp === 'on') return heat.setting === null ? sayState(setting, 'heater-on', { heater }) : sayState(setting, 'heater-at', { heater, setting: degrees(heat.setting, setting) });
  if (heat.counted !== null) return sayState(setting, 'joint-read', { value: degrees(heat.counted, setting) });
  const around = airWords(airAt(outlook, setting.now), setting);
  if (heat.lamp === 'never') return around;
  return sayState(setting, heat.lamp === 'off' ? 'heater-off-air' : 'heater-unseen-air', { heater, air: around });
}

/** The same, and who stays with it past closing. */
export function heatAndStays(outlook: Outlook, setting: Setting): string {
  const who = whoStays(outlook, setting);
  return who === null ? heatWords(outlook, setting) : sayState(setting, 'heat-and-stays', { heat: heatWords(outlook, setting), who });
}

/** The name of whoever stays with a lamp that is on, or for a fire watch; null: nobody said so, or nothing needs it. */
export function whoStays({ cure, heat }: Outlook, { shop, now }: Setting): string | null {
  const by = heat.lamp === 'on' || heat.counted !== null || isFireWatch(cure.card) ? attendantAt(cure, shop, now) : null;
  return by === null ? null : nameOf(shop, by);
}

/** The same behind other words of a list. */
export function staysWords(outlook: Outlook, setting: Setting): string {
  const who = whoStays(outlook, setting);
  return who === null ? '' : `, ${sayState(setting, 'stays', { who })}`;
}

/** At closing: which lamps are to be switched off. Where somebody stays with some of them the others are named; null: with all of them. */
export function lampsAlone(outlooks: readonly Outlook[], setting: Setting, usual: string): string | null {
  const lit = outlooks.filter(({ cure, heat }) => heat.lamp === 'on' && !isFireWatch(cure.card));
  const alone = lit.filter((outlook) => whoStays(outlook, setting) === null);
  if (alone.length === lit.length) return usual;
  return alone.length === 0 ? null : sayState(setting, 'lamps-alone', { jobs: [...new Set(alone.map(title))].join(', ') });
}

const airAt = ({ air }: Outlook, now: Instant): AirStep | undefined => air.findLast((one) => one.from <= now);

/** Air that nobody read and nobody is there for has a name of its own. */
export function airWords(step: AirStep | undefined, setting: Setting): string {
  if (step?.temperature == null) return sayState(setting, 'air-unknown');
  const value = degrees(step.temperature, setting);
  if (step.source === 'night setting') return sayState(setting, 'night-is', { value });
  return sayState(setting, step.source === 'closed days' ? 'closed-days-are' : 'air-is', { value });
}
