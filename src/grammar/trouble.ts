import type { Command, CommandKind } from '../repair/commands.js';

/** A line that may be what was meant. Nobody has checked yet whether it is valid. */
export interface Repair {
  readonly line: string;
  /** The words of a button; null when it is too much of a guess to be offered as one. */
  readonly label: string | null;
}

/** Why a line is no command. The repairs are worked out only when somebody wants to see them. */
export interface Trouble {
  readonly understood: string;
  readonly unclear: string | null;
  readonly problem: string;
  readonly command: CommandKind | null;
  readonly job: string | null;
  readonly repairs: () => readonly Repair[];
}

export type Parsed = { readonly ok: true; readonly command: Command } | { readonly ok: false; readonly trouble: Trouble };
