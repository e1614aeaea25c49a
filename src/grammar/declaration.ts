import type { Heater } from '../cure/history.js';
import type { Instant, Minutes } from '../cure/units.js';
import type { MilestoneKind } from '../cure/card.js';
import type { Command, CommandKind, ReadingMethod, TypedTemperature, When } from '../repair/commands.js';
import type { EntryNo, JobNo, JointNo, LampName } from '../repair/ids.js';
import type { Words } from './language.js';
import type { Problem } from './problem.js';

/**
 * What a command can carry besides its word. `time` has passed; `from` and `ready` are still to come.
 * `figure`: a number without `mm` is the depth as well. `reason`: free text behind the word, kept as typed. `length`: so many minutes.
 */
export type Parameter = 'job' | 'joint' | 'card' | 'lamp' | 'temperature' | 'air' | 'humidity' | 'depth' | 'figure' | 'method' | 'milestone' | 'time' | 'from' | 'ready' | 'entry' | 'reason' | 'length';

/** What was found in a line; a command uses what it takes, and the reader refuses the rest. */
export interface Slots {
  /** Which of the command's own ways to say it were used. */
  readonly forms: ReadonlySet<string>;
  /** The word `lamp` or `pad` stood in the line, with a temperature to come. */
  readonly heaterWord: boolean;
  /** What heats, by word or by name; both only by mistake. */
  readonly heaters: ReadonlySet<Heater>;
  /** A word for a lamp that is off stood in the line. */
  readonly offWord: boolean;
  readonly airWord: boolean;
  readonly job: JobNo | null;
  readonly joint: JointNo | null;
  readonly card: string | null;
  readonly lamp: LampName | null;
  readonly temperature: TypedTemperature | null;
  readonly air: TypedTemperature | null;
  readonly humidity: number | null;
  /** Millimetres. */
  readonly depth: number | null;
  readonly method: ReadingMethod;
  readonly milestone: MilestoneKind | null;
  readonly entry: EntryNo | null;
  /** The free text behind the word, as typed. */
  readonly reason: string;
  /** The procedure that the free text names, in the spelling of the shop; null: it names none that is known. */
  readonly procedure: string | null;
  readonly length: Minutes | null;
  readonly when: When;
  /** The moment still to come. */
  readonly ahead: Instant | null;
}

/** Something is missing, or two things contradict each other. */
export interface Gap {
  readonly problem: Problem;
  /** Words that, added to the line, fill it; `choose` when each stands for what the person may have meant. */
  readonly add: readonly string[] | 'each card';
  readonly choose: boolean;
  /** Where the words go: first of all, after what was said, or right before the temperature. */
  readonly place: 'start' | 'end' | 'before-temperature';
}

export type Built = { readonly ok: true; readonly command: Command } | { readonly ok: false; readonly gap: Gap };

/** Names for an example line that is valid in this shop: a job, and a card if there is one. */
export interface ExampleNames {
  readonly job: string;
  readonly card: string;
}

/** One command, declared once: what is read, what help shows and what a misread line is compared with come from here. */
export interface Declaration {
  readonly kind: CommandKind;
  /** Ways to say it, by name. The first word of the first form is the command's own word. */
  readonly forms: Readonly<Record<string, Words>>;
  readonly takes: readonly Parameter[];
  readonly usage: string;
  readonly example: (names: ExampleNames) => string;
  readonly build: (slots: Slots) => Built;
}

export const built = (command: Command): Built => ({ ok: true, command });
export const missing = (problem: Problem, ...add: readonly string[]): Built => gap({ problem, add, choose: false, place: 'end' });
export const choose = (problem: Problem, ...add: readonly string[]): Built => gap({ problem, add, choose: true, place: 'end' });
export const gap = (found: Gap): Built => ({ ok: false, gap: found });
