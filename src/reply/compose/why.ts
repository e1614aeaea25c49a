import { minutesBetween, type Instant } from '../../cure/units.js';
import type { Piece } from '../../cure/progress.js';
import type { MilestoneOutlook, Outlook } from '../../repair/outlook.js';
import { currentMilestone } from '../../repair/outlook.js';
import type { Answer } from '../answer.js';
import { exampleNote, milestoneSentence, title } from './state.js';
import { answer, capital, clock, degrees, MILESTONE_WORDS, tidy, type Setting } from './words.js';

/** The sum behind the time: a second person can redo it with a pocket calculator. */
export function composeWhy(outlook: Outlook, setting: Setting): Answer {
  const one = currentMilestone(outlook, setting.now) ?? outlook.milestones.at(-1) ?? null;
  if (one === null) return answer('plain', [`${title(outlook)} not closed yet: no strength clock runs.`, exampleNote(outlook.cure.card)]);
  const due = one.forecast.progress.due;
  const lines = splitAt(joined(one.forecast.progress.pieces), setting.now).flatMap((piece) => pieceLine(piece, due, setting));
  const rounding = one.forecast.dueAt === null ? `${capital(milestoneSentence(outlook, one, setting))}.` : `Sum ${one.forecast.dueAt > setting.now ? 'would reach' : 'reached'} 100 % at **${clock(one.forecast.dueAt, setting)}**, rounded up.`;
  const { card, start } = outlook.cure;
  return answer('plain', [`${title(outlook)} **${MILESTONE_WORDS[one.kind]}**, card ${card.name} (${card.version}), from ${start === null ? '?' : clock(start, setting)}:`, ...lines, rounding, recheckLine(one, setting), exampleNote(card)]);
}

function recheckLine(one: MilestoneOutlook, setting: Setting): string | null {
  if (one.check.round < 2 || one.check.dueAt === null) return null;
  return `Soft ${clock(one.check.answer?.at ?? one.check.dueAt, setting)}: check again after a quarter of the wait, ${clock(one.check.dueAt, setting)}.`;
}

/** `09:50-10:20 reading 30 °C: 30 of 150 min = 20 %`. */
function pieceLine(piece: Piece, due: Instant | null, setting: Setting): string[] {
  const end = due !== null && (piece.to === null || piece.to > due) ? due : piece.to;
  if (due !== null && piece.from >= due) return [];
  const span = `${clock(piece.from, setting)}-${end === null ? '…' : clock(end, setting)}`;
  const temperature = piece.temperature === null ? '' : ` ${degrees(piece.temperature, setting)}`;
  if (piece.wholeMinutes === null) return [`${span} ${piece.source}${temperature}: nothing counts`];
  if (end === null) return [`${span} ${piece.source}${temperature}: ${tidy(piece.wholeMinutes)} min would be 100 %`];
  const length = minutesBetween(piece.from, end);
  const ahead = piece.from >= setting.now ? 'if it stays so: ' : '';
  return [`${ahead}${span} ${piece.source}${temperature}: ${tidy(length)} of ${tidy(piece.wholeMinutes)} min = ${tidy((length / piece.wholeMinutes) * 100)} %`];
}

/** What is done and what is only expected are two lines. */
function splitAt(pieces: readonly Piece[], now: Instant): Piece[] {
  return pieces.flatMap((piece) => (piece.from < now && (piece.to === null || piece.to > now) ? [{ ...piece, to: now }, { ...piece, from: now }] : [piece]));
}

/** Neighbouring stretches that count alike are one line. */
function joined(pieces: readonly Piece[]): Piece[] {
  const lines: Piece[] = [];
  for (const piece of pieces) {
    const last = lines.at(-1);
    const alike = last !== undefined && last.temperature === piece.temperature && last.source === piece.source && last.wholeMinutes === piece.wholeMinutes;
    if (alike) lines[lines.length - 1] = { ...last, to: piece.to };
    else lines.push(piece);
  }
  return lines;
}
