import type { Command, CommandKind } from '../repair/commands.js';
import type { Problem } from './problem.js';
import type { Label, Said } from './said.js';

/** A line that may be what was meant. Nobody has checked yet whether it is valid. */
export interface Repair {
  readonly line: string;
  /** What stands on a button; null when it is too much of a guess to be offered as one. */
  readonly label: Label | null;
}

/** Why a line is no command. The repairs are worked out only when somebody wants to see them. */
export interface Trouble {
  readonly understood: readonly Said[];
  readonly unclear: string | null;
  readonly problem: Problem;
  readonly command: CommandKind | null;
  readonly job: string | null;
  readonly repairs: () => readonly Repair[];
  /** The line with nothing in it but what was understood. */
  readonly kept?: string;
}

export type Parsed = { readonly ok: true; readonly command: Command } | { readonly ok: false; readonly trouble: Trouble };
