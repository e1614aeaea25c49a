import { DateTime } from 'luxon';
import type { Piece } from '../../cure/progress.js';
import type { Instant } from '../../cure/units.js';
import { currentMilestone, type MilestoneOutlook, type Outlook } from '../../repair/outlook.js';
import type { Answer } from '../answer.js';
import { likelySentence } from './likely.js';
import { exampleNote, milestoneSentence, title } from './state.js';
import { lawBehind, ruleSentence, stretchWords } from './why-rule.js';
import { sumLines } from './why-sum.js';
import { answer, capital, clock, MILESTONE_WORDS, type Setting } from './words.js';

/** The sum behind the time: a second person can redo it with a pocket calculator. */
export function composeWhy(outlook: Outlook, setting: Setting): Answer {
  const one = currentMilestone(outlook, setting.now) ?? outlook.milestones.at(-1) ?? null;
  const { card, start } = outlook.cure;
  const law = one === null ? null : lawBehind(outlook.cure, one);
  if (one === null || law === null || start === null) return answer('plain', [`${title(outlook)} not closed yet: no strength clock runs.`, exampleNote(card)]);
  const words = (piece: Piece): string => stretchWords(piece, law, setting);
  return answer('plain', [
    `${title(outlook)} **${MILESTONE_WORDS[one.kind]}**, card ${card.name} (${card.version}), from ${clock(start, setting)}:`,
    ruleSentence(law, outlook, setting),
    outlook.cure.cameFrom === null ? null : `Entered as ${outlook.cure.cameFrom} by mistake and moved here, times kept.`,
    ...sumLines(one.forecast, start, words, setting),
    endSentence(outlook, one, setting),
    clocksChange(start, one.forecast.dueAt, setting),
    recheckLine(one, setting),
    likelySentence(outlook, one, setting),
    exampleNote(card),
  ]);
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
