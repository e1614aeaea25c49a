import { jobNo, jointNo, JOB_PATTERN, JOINT_PATTERN, type JobNo, type JointNo } from '../repair/ids.js';
import { commandWord, COMMAND_TABLE } from './command-table.js';
import type { Declaration, Gap, Slots } from './declaration.js';
import { appended, replaced, type Draft } from './draft.js';
import { wordsOfAll } from './language.js';
import type { Piece } from './pieces.js';
import type { Chunk } from './reader.js';
import { isFiller } from './small-words.js';
import { jobsOneSlipAway } from './spelling.js';
import type { Parsed, Trouble } from './trouble.js';

/** The head of a line whose tail is free text. */
interface Head {
  readonly declaration: Declaration;
  readonly job: JobNo | null;
  readonly joint: JointNo | null;
  /** The piece with which the free text begins. */
  readonly tail: number;
}

const WITH_REASON = COMMAND_TABLE.filter(({ takes }) => takes.includes('reason'));

/**
 * `release 501 metal was warm`: word, job and joint lead the line in any order, and what follows is kept as typed.
 * Null when the line begins otherwise.
 */
export function parseReasonLine(chunks: readonly Chunk[], draft: Draft): Parsed | null {
  const head = headOf(draft.pieces);
  if (head === null) return null;
  const reason = tailOf(head, draft.pieces, chunks);
  const { job, joint, declaration } = head;
  // Free text would swallow a mistyped job number, and the wrong car would be meant.
  if (job === null && /^\S*\d/.test(reason)) return { ok: false, trouble: noJob(head, reason, draft) };
  const built = declaration.build({ ...nothingElse(draft), job, joint, reason });
  return built.ok ? built : { ok: false, trouble: gapTrouble(head, built.gap, draft) };
}

function headOf(pieces: readonly Piece[]): Head | null {
  let declaration: Declaration | null = null;
  let job: JobNo | null = null;
  let joint: JointNo | null = null;
  let at = 0;
  for (let piece = pieces[at]; piece !== undefined; piece = pieces[at]) {
    const text = piece.text.replace(/^#/, '');
    const said: { declaration: Declaration; length: number } | null = declaration === null ? commandAt(pieces, at) : null;
    if (said !== null) declaration = said.declaration;
    else if (job === null && JOB_PATTERN.test(text)) job = jobNo(text);
    else if (joint === null && JOINT_PATTERN.test(text)) joint = jointNo(text);
    else if (!isFiller(text) || (declaration !== null && !JOB_PATTERN.test(pieces[at + 1]?.text ?? ''))) break;
    at += said?.length ?? 1;
  }
  return declaration === null ? null : { declaration, job, joint, tail: at };
}

function commandAt(pieces: readonly Piece[], at: number): { declaration: Declaration; length: number } | null {
  for (const declaration of WITH_REASON) {
    for (const words of Object.values(declaration.forms).flatMap(wordsOfAll)) {
      const parts = words.split(' ');
      if (parts.every((part, index) => pieces[at + index]?.text === part)) return { declaration, length: parts.length };
    }
  }
  return null;
}

/** The rest as typed; a chunk that was cut in two gives only its second part. */
function tailOf({ tail }: Head, pieces: readonly Piece[], chunks: readonly Chunk[]): string {
  const first = pieces[tail];
  if (first === undefined) return '';
  const cut = pieces[tail - 1]?.chunk === first.chunk;
  const own = cut ? pieces.slice(tail).filter((piece) => piece.chunk === first.chunk).map((piece) => piece.typed) : [chunks[first.chunk]?.typed ?? ''];
  return [own.join(''), ...chunks.slice(first.chunk + 1).map((chunk) => chunk.typed)].join(' ');
}

const nothingElse = ({ names: { now } }: Draft): Omit<Slots, 'job' | 'joint' | 'reason'> => ({
  forms: new Set(),
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
  when: { earliest: now, latest: now, stated: false, confirmed: false },
  ahead: null,
});

const told = ({ declaration, job, joint }: Head): string => [commandWord(declaration), job === null ? null : `job ${job}`, joint].filter((part) => part !== null).join(', ');

function noJob(head: Head, reason: string, draft: Draft): Trouble {
  const [unclear = ''] = reason.split(' ');
  const place = { first: head.tail, last: head.tail };
  return {
    understood: told(head),
    unclear,
    problem: 'a job number before the reason',
    command: head.declaration.kind,
    job: null,
    repairs: () => jobsOneSlipAway(draft.pieces[head.tail]?.text ?? '', draft.names).map((job) => ({ line: replaced(draft, place, job), label: job })),
  };
}

const gapTrouble = (head: Head, gap: Gap, draft: Draft): Trouble => ({
  understood: told(head),
  unclear: null,
  problem: gap.problem,
  command: head.declaration.kind,
  job: head.job,
  repairs: () => (gap.add === 'each card' ? [] : gap.add).map((words) => ({ line: appended(draft, words), label: null })),
});
