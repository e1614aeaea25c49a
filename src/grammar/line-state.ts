import { assignNumbers, type Assigned } from './assign-numbers.js';
import { written, type Draft } from './draft.js';
import type { FoundTime } from './find-time.js';
import type { Problem } from './problem.js';
import { isNegation } from './small-words.js';
import type { Token } from './token.js';
import { timeWord } from './time-words.js';
import type { Parsed, Repair, Trouble } from './trouble.js';
import { understood } from './understood.js';
import type { Spoken } from './which-command.js';

/** How far a line has been understood. */
export interface LineState {
  readonly draft: Draft;
  /** What is left when times and fillers are taken out, with phrases and values put together. */
  readonly tokens: readonly Token[];
  readonly times: readonly FoundTime[];
  readonly spoken: Spoken | null;
  readonly assigned: Assigned | null;
  /** A question mark stood in the line. */
  readonly asks: boolean;
}

export interface Finding {
  readonly problem: Problem;
  readonly unclear: string | null;
  readonly repairs: () => readonly Repair[];
}

/** The line ends here: what was understood so far (without the wrong tokens), and what was found wrong. */
export function troubled(state: LineState, finding: Finding, wrong: readonly Token[] = []): Parsed {
  const { tokens, times, spoken, draft } = state;
  const clear = tokens.filter((token) => !wrong.includes(token));
  const assigned = state.assigned ?? (spoken === null ? null : assignNumbers(clear, spoken, draft.names));
  const trouble: Trouble = {
    understood: understood(clear, times, assigned, draft.names.openJobs),
    unclear: finding.unclear,
    problem: finding.problem,
    command: spoken?.declaration.kind ?? null,
    job: jobTyped({ ...state, assigned }),
    repairs: finding.repairs,
    ...keptOf(state, clear, assigned),
  };
  return { ok: false, trouble };
}

/** Kinds that mean something by themselves; without its verb a line would say another thing. */
const KEPT: ReadonlySet<Token['kind']> = new Set(['form', 'number', 'joint', 'card', 'degrees', 'lamp', 'depth', 'humidity', 'method', 'milestone']);

/** A time that was not understood is never left out: the line would say now. */
const isTimeLike = (token: Token): boolean => TIME_KINDS.has(token.kind) || (token.kind === 'word' && timeWord(token.text) !== null);
const TIME_KINDS: ReadonlySet<Token['kind']> = new Set(['amount', 'range', 'clock', 'stamp', 'unknown']);

function keptOf({ draft, spoken, times }: LineState, clear: readonly Token[], assigned: Assigned | null): Pick<Trouble, 'kept'> {
  const kept = clear.filter((token) => KEPT.has(token.kind) && !(token.kind === 'number' && assigned?.extra.includes(token) === true));
  const [first] = kept;
  if (spoken === null || times.length > 0 || first?.first !== 0 || clear.some((token) => isNegation(token.text) || isTimeLike(token))) return {};
  const places = new Set(kept.flatMap((token) => Array.from({ length: token.last - token.first + 1 }, (_, index) => token.first + index)));
  return { kept: written(draft, new Map(draft.pieces.flatMap((_, index): [number, string][] => (places.has(index) ? [] : [[index, '']])))) };
}

/** The number that is the job, or would most likely be. */
export function jobTyped({ tokens, assigned }: LineState): string | null {
  const token = assigned === null ? tokens.find((one) => one.kind === 'number' && one.whole) : assigned.job;
  return token?.text.replace('#', '') ?? null;
}
