import { assignNumbers, type Assigned } from './assign-numbers.js';
import type { Draft } from './draft.js';
import type { FoundTime } from './find-time.js';
import type { Problem } from './problem.js';
import type { Token } from './token.js';
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
  };
  return { ok: false, trouble };
}

/** The number that is the job, or would most likely be. */
export function jobTyped({ tokens, assigned }: LineState): string | null {
  const token = assigned === null ? tokens.find((one) => one.kind === 'number' && one.whole) : assigned.job;
  return token?.text.replace('#', '') ?? null;
}
