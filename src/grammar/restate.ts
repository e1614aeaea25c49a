import { JOB_PATTERN, JOINT_PATTERN } from '../repair/ids.js';
import { done } from './commands/done.js';
import { weld } from './commands/weld.js';
import { isClampWord } from './asking-words.js';
import { wordsOfAll } from './language.js';
import { commandWords } from './phrases.js';
import type { Piece } from './pieces.js';
import { restateMay } from './restate-may.js';
import { shapeOf } from './shapes.js';
import { isFiller, isNegation } from './small-words.js';
import { timeWord, WEEKDAYS } from './time-words.js';

const SAYS: ReadonlySet<string> = new Set(['says', 'said', 'sagt', 'meint', 'dice']);
const DOES: ReadonlySet<string> = new Set(['do', 'does', 'takes', 'macht', 'übernimmt', 'hace', 'toma']);
const TAKES: ReadonlySet<string> = new Set(['takes', 'take', 'übernimmt', 'nimmt', 'toma']);
const ALL: ReadonlySet<string> = new Set(['all', 'alle', 'alles', 'todo', 'todos']);
const POSSIBLE: ReadonlySet<string> = new Set(['ok', 'okay', 'possible', 'möglich', 'posible']);
/** Who says so is nobody, or is asked for. */
const NOT_A_NAME: ReadonlySet<string> = new Set(['who', 'what', 'when', 'if', 'it', 'i', 'wer', 'was', 'wann', 'quien', 'quién', 'que', 'qué', 'they', 'you']);
const DONE: ReadonlySet<string> = new Set(Object.values(done.forms).flatMap(wordsOfAll));
/** `welding over`: said of a lamp or of the open time it is none of that. */
const WELD: ReadonlySet<string> = new Set(Object.values(weld.forms).flatMap(wordsOfAll));

/**
 * Ways of speaking that put the words in another order, as the plain line they stand for: `dee do 421` is `hand 421 to dee`.
 * Null for every other line.
 */
export function restate(pieces: readonly Piece[], asks: boolean, freeText: boolean): string | null {
  const other = asks ? [askedDone, askedReady] : [reported, givenAll, given, clampsOff, stepDone];
  return restateMay(pieces, asks) ?? (freeText ? null : other.reduce<string | null>((found, read) => found ?? read(pieces), null));
}

/** Whether such a way of speaking was put as a question. */
export const isStatement = (pieces: readonly Piece[]): boolean => [reported, givenAll, given, clampsOff].some((read) => read(pieces) !== null);

const typed = (pieces: readonly Piece[]): string => pieces.map((piece) => piece.typed).join(' ');

const isName = (piece: Piece | undefined): piece is Piece => piece !== undefined && /^[\p{L}<@]/u.test(piece.text) && !isNegation(piece.text) && !NOT_A_NAME.has(piece.text) && !DONE.has(piece.text) && !commandWords.has(piece.text);

/** `olly says its shut 31`. */
function reported([name, says, ...rest]: readonly Piece[]): string | null {
  return isName(name) && says !== undefined && SAYS.has(says.text) && rest.length > 0 ? typed(rest) : null;
}

/** `bo takes all except 612`. */
function givenAll([name, takes, all, ...rest]: readonly Piece[]): string | null {
  if (!isName(name) || takes === undefined || !TAKES.has(takes.text)) return null;
  if (all?.text === 'over' && rest.length === 0) return `handover ${name.typed}`;
  return all !== undefined && ALL.has(all.text) ? ['handover', name.typed, ...rest.map((piece) => piece.typed)].join(' ') : null;
}

/** `dee do 421`. */
function given([name, does, job, joint, ...rest]: readonly Piece[]): string | null {
  if (!isName(name) || does === undefined || !DOES.has(does.text) || job === undefined || !JOB_PATTERN.test(job.text) || rest.length > 0) return null;
  if (joint !== undefined && !JOINT_PATTERN.test(joint.text)) return null;
  return ['hand', job.text, ...(joint === undefined ? [] : [joint.text]), 'to', name.typed].join(' ');
}

const OFF: ReadonlySet<string> = new Set(['off', 'ab', 'weg', 'fuera', 'quitadas', 'quitados']);
const TOOK: ReadonlySet<string> = new Set(['i', 'took', 'take', 'taken', 'have', 'are', 'all', 'ich', 'habe', 'sind', 'alle', 'todas', 'las', 'los']);

/** `i took the clamps off 501`: that is a step, and no lamp. */
function clampsOff(pieces: readonly Piece[]): string | null {
  const said = pieces.filter((piece) => !isFiller(piece.text) && !TOOK.has(piece.text) && !OFF.has(piece.text) && !isClampWord(piece.text));
  if (!pieces.some((piece) => isClampWord(piece.text)) || !pieces.some((piece) => OFF.has(piece.text)) || pieces.some((piece) => isNegation(piece.text))) return null;
  const [job, joint] = said;
  const about = job === undefined || !isNumbered(job) ? [] : joint !== undefined && JOINT_PATTERN.test(joint.text) ? [job, joint] : [job];
  const time = said.slice(about.length);
  if (time.some((piece) => timeWord(piece.text) === null && shapeOf(piece.text) === null)) return null;
  return ['done', ...about.map((piece) => piece.text), 'clamps off', ...time.map((piece) => piece.text)].join(' ');
}

/** `501 weld done`, `weld 501 fertig 20 min ago`. */
function stepDone(pieces: readonly Piece[]): string | null {
  const at = pieces.findIndex((piece, index) => DONE.has(piece.text) || (piece.text === 'over' && WELD.has(pieces[index - 1]?.text ?? '')));
  const before = pieces.slice(0, Math.max(at, 0)).filter((piece) => !isFiller(piece.text));
  const after = pieces.slice(at + 1);
  const steps = before.filter((piece) => !isNumbered(piece));
  if (at < 1 || steps.length === 0 || pieces.some((piece) => isNegation(piece.text))) return null;
  const behind = after.length > 0 && after.length <= 2 && after.every(isNumbered) ? after : [];
  const about = [...before.filter(isNumbered), ...behind].sort((one, other) => Number(JOINT_PATTERN.test(one.text)) - Number(JOINT_PATTERN.test(other.text)));
  return ['done', ...about.map((piece) => piece.text), typed(steps), ...(behind.length > 0 ? [] : after.map((piece) => piece.typed))].join(' ');
}

const isNumbered = ({ text }: Piece): boolean => JOB_PATTERN.test(text.replace(/^#/, '')) || JOINT_PATTERN.test(text);

/** `607 filler done?`: what is asked for is how far the car is. */
function askedDone(pieces: readonly Piece[]): string | null {
  const last = pieces.at(-1);
  const jobs = pieces.filter((piece) => JOB_PATTERN.test(piece.text));
  return last !== undefined && DONE.has(last.text) && jobs.length <= 1 && !pieces.some((piece) => isNegation(piece.text)) ? ['when', ...jobs.map((piece) => piece.text)].join(' ') : null;
}

/** `419 friday 12 ok?`. */
function askedReady(pieces: readonly Piece[]): string | null {
  const day = pieces.findIndex((piece) => isDay(piece.text) || timeWord(piece.text) === 'by');
  const last = pieces.at(-1);
  if (day < 1 || last === undefined || !POSSIBLE.has(last.text)) return null;
  return `latest start ${typed(pieces.slice(0, day))} ready ${typed(pieces.slice(day, -1))}`;
}

function isDay(text: string): boolean {
  const meaning = timeWord(text);
  return meaning === 'today' || meaning === 'tomorrow' || WEEKDAYS.some((day) => day === meaning);
}
