import { DateTime } from 'luxon';
import type { Piece } from '../../cure/progress.js';
import type { Instant } from '../../cure/units.js';
import { currentMilestone, holdOf, type MilestoneOutlook, type Outlook } from '../../repair/outlook.js';
import type { Answer } from '../answer.js';
import { likelySentence } from './likely.js';
import { dampSentence, openHold } from './open.js';
import { exampleNote, holdWords, milestoneSentence, title } from './state.js';
import { lawBehind, ruleSentence, stretchWords } from './why-rule.js';
import { sumLines } from './why-sum.js';
import { answer, capital, clock, MILESTONE_WORDS, type Setting } from './words.js';

/** The sum behind the time: a second person can redo it with a pocket calculator. */
export function composeWhy(outlook: Outlook, setting: Setting): Answer {
  const one = currentMilestone(outlook, setting.now) ?? outlook.milestones.at(-1) ?? null;
  const { card, start } = outlook.cure;
  const law = one === null ? null : lawBehind(outlook.cure, one);
  if (one === null || law === null || start === null) return answer('plain', [`${title(outlook)} not closed yet: no strength clock runs.`, openHold(outlook, setting), dampSentence(outlook, setting), exampleNote(card, setting)]);
  const words = (piece: Piece): string => stretchWords(piece, law, setting);
  const hold = holdOf(outlook, one);
  const held = hold === null ? '' : ` **HELD**, ${holdWords(hold, setting)}, the foreman decides;`;
  const head = `${title(outlook)} **${MILESTONE_WORDS[one.kind]}**${held === '' ? ',' : held} card ${card.name} (${card.version}), from ${clock(start, setting)}`;
  const sum = [...sumLines(one.forecast, start, words, setting), endSentence(outlook, one, setting)];
  const besides = [movedHere(outlook), clocksChange(start, one.forecast.dueAt, setting), recheckLine(one, setting), likelySentence(outlook, one, setting), exampleNote(card, setting)].flatMap((line) => line ?? []);
  return answer('plain', onOneScreen(head, ruleSentence(law, outlook, setting), sum, besides));
}

const movedHere = ({ cure }: Outlook): string | null => (cure.cameFrom === null ? null : `Entered as ${cure.cameFrom} by mistake and moved here, times kept.`);

/** Besides the head, as many lines as a phone shows under it. */
const MOST_LINES = 6;

/** What does not fit goes onto one line together, last the rule beside the head; of the sum no line is joined or left out. */
function onOneScreen(head: string, rule: string, sum: readonly string[], besides: readonly string[]): string[] {
  const apart = [rule, ...sum, ...besides];
  if (apart.length <= MOST_LINES) return [`${head}:`, ...apart];
  const together = besides.length === 0 ? [] : [besides.join(' ')];
  const room = MOST_LINES - sum.length - together.length;
  return room > 0 ? [`${head}:`, rule, ...sum, ...together] : [`${head}. ${rule}`, ...sum, ...together];
}

function endSentence(outlook: Outlook, one: MilestoneOutlook, setting: Setting): string {
  const { dueAt } = one.forecast;
  if (dueAt === null) return `${capital(milestoneSentence(outlook, one, setting))}.`;
  return `Sum ${dueAt > setting.now ? 'would reach' : 'reached'} 100 % at **${clock(dueAt, setting)}**, rounded up.`;
}

/** Who counts on from a printed time must know that the clock did not go on evenly. */
function clocksChange(start: Instant, due: Instant | null, { shop }: Setting): string | null {
  if (due === null) return null;
  const [before, after] = [start, due].map((at) => DateTime.fromMillis(at, { zone: shop.zone }).offset);
  if (before === undefined || after === undefined || before === after) return null;
  return `On the way the clocks go ${after > before ? 'forward' : 'back'} ${Math.abs(after - before)} min: the lines count real minutes.`;
}

function recheckLine(one: MilestoneOutlook, setting: Setting): string | null {
  if (one.check.round < 2 || one.check.dueAt === null) return null;
  return `Soft ${clock(one.check.answer?.at ?? one.check.dueAt, setting)}: check again after a quarter of the wait, ${clock(one.check.dueAt, setting)}.`;
}
