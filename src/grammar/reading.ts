import type { Instant } from '../cure/units.js';
import type { Command } from '../repair/commands.js';
import type { Problem } from './problem.js';
import type { Label, Said } from './said.js';

export type { PlainProblem, Problem, ProblemWithValues } from './problem.js';
export type { Label, Said, ShownWord } from './said.js';

/** What the reader must know to read a line; all of it comes in as values. */
export interface ReadingContext {
  readonly now: Instant;
  /** IANA zone of the shop: `13:40` is shop time. */
  readonly zone: string;
  readonly cards: readonly string[];
  readonly lamps: readonly string[];
  /** Heating pads; a name may be a number. */
  readonly pads: readonly string[];
  readonly openJobs: readonly string[];
  /** Names of the procedures that a job can begin. */
  readonly procedures: readonly string[];
  /** Whether what is offered instead of a misread line can be meant in this shop; without it, everything can. */
  readonly allows?: (command: Command) => boolean;
}

/** A line that stands for exactly one of several readings; offered as a button, never chosen for the person. */
export interface Choice {
  readonly label: Label;
  readonly line: string;
}

/** A line that was not understood. Nothing is stored from it. */
export interface Misread {
  /** The part that was understood, one thing after the other (may be empty). */
  readonly understood: readonly Said[];
  /** The part that was not, as typed; null when something is missing instead. */
  readonly unclear: string | null;
  /** What is missing or wrong. */
  readonly problem: Problem;
  /** The nearest form that would have been valid, ready to be typed. */
  readonly nearest: string;
  readonly choices: readonly Choice[];
}

export type Read = { readonly ok: true; readonly command: Command } | { readonly ok: false; readonly misread: Misread };
