import type { Command, CommandKind } from '../repair/commands.js';
import { jobNo } from '../repair/ids.js';
import { COMMANDS, shownWords } from './command-table.js';
import { replaced, typedAt, type Draft } from './draft.js';
import { ago, asTyped } from './said.js';
import type { Parsed, Repair } from './trouble.js';

/** What begins something never guesses on which car; what ends something asks first. */
const NEVER: ReadonlySet<CommandKind> = new Set(['paste', 'cure', 'begin', 'latest-start', 'tap', 'enter']);
const ASKS_FIRST: ReadonlySet<CommandKind> = new Set(['scrap', 'release', 'override', 'hold', 'sign', 'hand']);
/** Up to this many, a number that stands alone may be minutes as well. */
const MOST_MINUTES_MEANT = 120;

/**
 * `03` for job 7203: a number of two figures or more that is no open job, but the end of exactly one. Where the number could
 * be anything else, or several jobs end with it, it is asked about.
 */
export function jobFromItsEnd(command: Command, draft: Draft): Parsed {
  const plain: Parsed = { ok: true, command };
  if (!('job' in command) || command.job === null || NEVER.has(command.kind) || (command.kind === 'closed' && command.card !== null)) return plain;
  const { job } = command;
  const open = draft.names.openJobs;
  const ending = [...open].filter((other) => other.length > job.length && other.endsWith(job));
  const at = draft.pieces.findIndex((piece) => piece.text === job);
  if (job.length < 2 || open.has(job) || ending.length === 0 || at < 0) return plain;
  const [only, second] = ending;
  if (only !== undefined && second === undefined && !ASKS_FIRST.has(command.kind) && !mayBeElse(command, job, draft)) return { ok: true, command: { ...command, job: jobNo(only) } };
  const place = { first: at, last: at };
  return {
    ok: false,
    trouble: {
      understood: [{ is: 'command', word: shownWords(COMMANDS[command.kind]) }],
      unclear: typedAt(draft, [place]),
      problem: second === undefined ? { is: 'whole-job', job: only ?? '' } : 'whole-job-of-several',
      command: command.kind,
      job: null,
      repairs: () => [...ending.map((whole) => ({ line: replaced(draft, place, whole), label: asTyped(whole) })), ...otherwise(command, job, draft, place), { line: replaced(draft, place, `#${job}`), label: asTyped(`#${job}`) }],
    },
  };
}

/** Minutes, or a temperature that stands beside it and could be the job just as well. */
function mayBeElse(command: Command, job: string, draft: Draft): boolean {
  if ('setting' in command || command.kind === 'read') return otherEnding(job, draft);
  return mayBeMinutes(command, job);
}

const mayBeMinutes = (command: Command, job: string): boolean => 'when' in command && !command.when.stated && !job.startsWith('0') && Number(job) <= MOST_MINUTES_MEANT;

const otherEnding = (job: string, { pieces, names }: Draft): boolean =>
  pieces.some(({ text }) => text !== job && /^\d{2,}$/.test(text) && [...names.openJobs].some((open) => open.endsWith(text)));

const otherwise = (command: Command, job: string, draft: Draft, place: { readonly first: number; readonly last: number }): readonly Repair[] =>
  mayBeMinutes(command, job) && !('setting' in command) && command.kind !== 'read' ? [{ line: replaced(draft, place, `${job} min ago`), label: ago(`${job} min`) }] : [];
