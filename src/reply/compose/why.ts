import { DateTime } from 'luxon';
import type { Piece } from '../../cure/progress.js';
import { minutesBetween, type Instant } from '../../cure/units.js';
import { currentMilestone, holdOf, type MilestoneOutlook, type Outlook } from '../../repair/outlook.js';
import { nameOf } from '../../repair/people.js';
import type { Answer } from '../answer.js';
import { sayWhy } from '../catalogue/why.js';
import { cartridgeHeld, cartridgeLine } from './cartridge.js';
import { likelySentence } from './likely.js';
import { dampSentence, openHold } from './open.js';
import { exampleNote, holdReason, milestoneSentence, title } from './state.js';
import { lawBehind, ruleSentence, stretchWords } from './why-rule.js';
import { sumLines } from './why-sum.js';
import { answer, capital, clock, degrees, milestoneWord, type Setting } from './words.js';

/** The sum behind the time: a second person can redo it with a pocket calculator. */
export function composeWhy(outlook: Outlook, setting: Setting): Answer {
  const one = currentMilestone(outlook, setting.now) ?? outlook.milestones.at(-1) ?? null;
  const { card, start } = outlook.cure;
  const law = one === null ? null : lawBehind(outlook.cure, one);
  if (one === null || law === null || start === null) return answer('plain', [cartridgeHeld(outlook, setting), sayWhy(setting, 'not-closed', { job: title(outlook) }), openHold(outlook, setting), dampSentence(outlook, setting), corrections(outlook, setting), cartridgeLine(outlook, setting), exampleNote(card, setting)]);
  const words = (piece: Piece): string => stretchWords(piece, law, setting);
  const head = headLine(outlook, one, start, setting);
  const sum = [...sumLines(one.forecast, start, words, setting), endSentence(outlook, one, setting)];
  const besides = [corrections(outlook, setting), movedHere(outlook, setting), cartridgeLine(outlook, setting), enteredLate(outlook, setting), clocksChange(start, one.forecast.dueAt, setting), recheckLine(one, setting), likelySentence(outlook, one, setting), exampleNote(card, setting)].flatMap((line) => line ?? []);
  return answer('plain', onOneScreen(head, ruleSentence(law, outlook, setting), sum, besides));
}

function headLine(outlook: Outlook, one: MilestoneOutlook, start: Instant, setting: Setting): string {
  const { card } = outlook.cure;
  const hold = holdOf(outlook, one);
  const values = { job: title(outlook), milestone: milestoneWord(one.kind, setting), card: card.name, version: card.version, at: clock(start, setting) };
  return hold === null ? sayWhy(setting, 'head', values) : sayWhy(setting, 'head-held', { ...values, reason: holdReason(hold, one, outlook, setting) });
}

/** What was typed first is still in the record. */
function corrections({ cure: { corrected } }: Outlook, setting: Setting): string | null {
  const said = corrected.map(({ before, after, by, enteredAt }) => sayWhy(setting, 'corrected', { before: degrees(before, setting), after: degrees(after, setting), who: nameOf(setting.shop, by), at: clock(enteredAt, setting) }));
  return said.length === 0 ? null : said.join(' ');
}

const movedHere = ({ cure }: Outlook, setting: Setting): string | null => (cure.cameFrom === null ? null : sayWhy(setting, 'moved', { job: cure.cameFrom }));

/** A time that was told later than it happened is shown with the other one. */
function enteredLate({ cure: { start, startEnteredAt } }: Outlook, setting: Setting): string | null {
  if (start === null || startEnteredAt === null || minutesBetween(start, startEnteredAt) < 1) return null;
  return sayWhy(setting, 'entered', { at: clock(startEnteredAt, setting) });
}

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
  return sayWhy(setting, dueAt > setting.now ? 'would-reach' : 'reached', { at: clock(dueAt, setting) });
}

/** Who counts on from a printed time must know that the clock did not go on evenly. */
function clocksChange(start: Instant, due: Instant | null, setting: Setting): string | null {
  if (due === null) return null;
  const [before, after] = [start, due].map((at) => DateTime.fromMillis(at, { zone: setting.shop.zone }).offset);
  if (before === undefined || after === undefined || before === after) return null;
  return sayWhy(setting, after > before ? 'clocks-forward' : 'clocks-back', { minutes: Math.abs(after - before) });
}

function recheckLine(one: MilestoneOutlook, setting: Setting): string | null {
  if (one.check.round < 2 || one.check.dueAt === null) return null;
  return sayWhy(setting, 'check-again', { soft: clock(one.check.answer?.at ?? one.check.dueAt, setting), at: clock(one.check.dueAt, setting) });
}
