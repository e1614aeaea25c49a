import { jobNo, jointNo, JOB_PATTERN, JOINT_PATTERN, type JobNo, type JointNo } from '../repair/ids.js';
import type { CommandKind } from '../repair/commands.js';
import { commandWord, COMMAND_TABLE, shownWords } from './command-table.js';
import type { Declaration, Gap, Slots } from './declaration.js';
import { appended, replaced, type Draft } from './draft.js';
import { freeText, type FreeText } from './free-text.js';
import { hyphened } from './known-names.js';
import { wordsOfAll } from './language.js';
import { lengthSaid } from './length-said.js';
import type { Piece } from './pieces.js';
import type { Problem } from './problem.js';
import type { Chunk } from './reader.js';
import { asTyped, type Said } from './said.js';
import { isFiller } from './small-words.js';
import { jobsOneSlipAway } from './spelling.js';
import { wrongTime } from './time-findings.js';
import type { Parsed, Trouble } from './trouble.js';

/** The head of a line whose tail is free text. */
interface Head {
  readonly declaration: Declaration;
  readonly form: string;
  readonly job: JobNo | null;
  readonly joint: JointNo | null;
  /** The piece with which the free text begins. */
  readonly tail: number;
}

interface Spelled {
  readonly declaration: Declaration;
  readonly form: string;
  readonly words: readonly string[];
}

/** The longest first: `sign off` before `sign`. */
const WITH_TEXT: readonly Spelled[] = COMMAND_TABLE.filter(({ takes }) => takes.includes('reason') || takes.includes('length'))
  .flatMap((declaration) => Object.entries(declaration.forms).flatMap(([form, words]) => wordsOfAll(words).map((text) => ({ declaration, form, words: text.split(' ') }))))
  .sort((one, other) => other.words.length - one.words.length);

/** In a reason a question mark is a mark like any other. */
const PROSE: ReadonlySet<CommandKind> = new Set(['release', 'scrap', 'hold', 'override', 'enter']);

/**
 * `release 501 metal was warm`: word, job and joint lead the line in any order, and what follows is kept as typed.
 * Null when the line begins otherwise.
 */
export function parseReasonLine(chunks: readonly Chunk[], draft: Draft, asks: boolean): Parsed | null {
  const head = headOf(draft.pieces);
  if (head === null) return null;
  const text = freeText(draft, chunks, head.tail, head.declaration.takes.includes('time'));
  if (!text.ok) return { ok: false, trouble: timeTrouble(head, text, draft) };
  const { job, joint, declaration, form } = head;
  if (asks && !PROSE.has(declaration.kind)) return { ok: false, trouble: questioned(head) };
  const takes = declaration.takes;
  if (job !== null && !takes.includes('job')) return { ok: false, trouble: strayJob(head, job, draft) };
  const procedure = draft.names.procedures.get(hyphened(text.words)) ?? null;
  // Free text would swallow a mistyped job number, and the wrong car would be meant.
  if (job === null && takes.includes('job') && procedure === null && startsLikeJob(text.words, declaration)) return { ok: false, trouble: noJob(head, text.words, draft) };
  const length = takes.includes('length') ? lengthSaid(draft, head.tail) : null;
  if (length !== null && !length.ok) return { ok: false, trouble: { ...gapTrouble(head, { problem: length.problem, add: [], choose: true, place: 'end' }, draft), repairs: () => length.ways.map(({ words, label }) => ({ line: `${commandWord(declaration)} ${words}`, label })) } };
  const built = declaration.build({ ...nothingElse(draft, form), job, joint, reason: text.words, when: text.when, procedure, length: length?.length ?? null });
  return built.ok ? built : { ok: false, trouble: gapTrouble(head, built.gap, draft) };
}

/** Whether the line is one whose words behind the command are free. */
export const beginsFreeText = (pieces: readonly Piece[]): boolean => headOf(pieces) !== null;

/** A batch or a date begins with a figure and is one word. */
const startsLikeJob = (words: string, { kind }: Declaration): boolean => /^\S*\d/.test(words) && !(kind === 'enter' && !words.includes(' '));

function headOf(pieces: readonly Piece[]): Head | null {
  let said: Spelled | null = null;
  let job: JobNo | null = null;
  let joint: JointNo | null = null;
  let at = 0;
  for (let piece = pieces[at]; piece !== undefined; piece = pieces[at]) {
    const text = piece.text.replace(/^#/, '');
    const here: Spelled | null = said === null ? commandAt(pieces, at) : null;
    if (here !== null) said = here;
    else if (job === null && isJob(text, pieces, at, said)) job = jobNo(text);
    else if (joint === null && JOINT_PATTERN.test(text)) joint = jointNo(text);
    else if (!isFiller(text) || (said !== null && !JOB_PATTERN.test(pieces[at + 1]?.text ?? ''))) break;
    at += here?.words.length ?? 1;
  }
  return said === null ? null : { declaration: said.declaration, form: said.form, job, joint, tail: at };
}

/** `batch 55B` is one word, not job 55. */
function isJob(text: string, pieces: readonly Piece[], at: number, said: Spelled | null): boolean {
  if (!JOB_PATTERN.test(text) || (said !== null && !said.declaration.takes.includes('job'))) return false;
  return said?.declaration.kind !== 'enter' || pieces[at + 1]?.chunk !== pieces[at]?.chunk;
}

const commandAt = (pieces: readonly Piece[], at: number): Spelled | null => WITH_TEXT.find(({ words }) => words.every((word, index) => pieces[at + index]?.text === word)) ?? null;

const nothingElse = ({ names: { now } }: Draft, form: string): Omit<Slots, 'job' | 'joint' | 'reason'> => ({
  forms: new Set([form]),
  heaterWord: false,
  heaters: new Set(),
  offWord: false,
  airWord: false,
  card: null,
  lamp: null,
  temperature: null,
  air: null,
  humidity: null,
  depth: null,
  method: 'unstated',
  milestone: null,
  entry: null,
  procedure: null,
  length: null,
  when: { earliest: now, latest: now, stated: false, confirmed: false },
  ahead: null,
});

const told = ({ declaration, job, joint }: Head): readonly Said[] => [{ is: 'command', word: shownWords(declaration) }, ...(job === null ? [] : [{ is: 'job', job } as const]), ...(joint === null ? [] : asTyped(joint))];

const troubleOf = (head: Head, problem: Problem, unclear: string | null, repairs: Trouble['repairs']): Trouble => ({ understood: told(head), unclear, problem, command: head.declaration.kind, job: head.job, repairs });

function noJob(head: Head, reason: string, draft: Draft): Trouble {
  const [unclear = ''] = reason.split(' ');
  const place = { first: head.tail, last: head.tail };
  return troubleOf(head, 'job-before-reason', unclear, () => jobsOneSlipAway(draft.pieces[head.tail]?.text ?? '', draft.names).map((job) => ({ line: replaced(draft, place, job), label: asTyped(job) })));
}

/** A question is answered, never written down as a fact. */
const questioned = (head: Head): Trouble => troubleOf(head, 'no-question', '?', () => [{ line: head.job === null ? 'when' : `when ${head.job}`, label: null }]);

function strayJob(head: Head, job: JobNo, draft: Draft): Trouble {
  const at = draft.pieces.findIndex((piece) => piece.text.replace(/^#/, '') === job);
  return { ...troubleOf({ ...head, job: null }, { is: 'no-number-in-front', word: shownWords(head.declaration) }, job, () => [{ line: replaced(draft, { first: at, last: at }, ''), label: null }]) };
}

function timeTrouble(head: Head, { time, resolved }: Extract<FreeText, { readonly ok: false }>, draft: Draft): Trouble {
  const finding = wrongTime(draft, time, resolved);
  return troubleOf(head, finding.problem, finding.unclear, finding.repairs);
}

const gapTrouble = (head: Head, gap: Gap, draft: Draft): Trouble => troubleOf(head, gap.problem, null, () => (gap.add === 'each card' ? [] : gap.add).map((words) => ({ line: appended(draft, words), label: null })));

