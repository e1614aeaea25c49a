import type { MilestoneKind } from '../cure/card.js';
import type { Command, CommandKind, ReadingMethod, TypedTemperature, When } from '../repair/commands.js';
import type { EntryNo, JobNo, JointNo, LampName } from '../repair/ids.js';
import type { Words } from './language.js';

/** What a command can carry besides its word. */
export type Parameter = 'job' | 'joint' | 'card' | 'lamp' | 'temperature' | 'humidity' | 'method' | 'milestone' | 'time' | 'entry' | 'reason';

/** What was found in a line; a command uses what it takes, and the reader refuses the rest. */
export interface Slots {
  /** Which of the command's own ways to say it were used. */
  readonly forms: ReadonlySet<string>;
  /** The word `lamp` stood in the line. */
  readonly lampWord: boolean;
  readonly job: JobNo | null;
  readonly joint: JointNo | null;
  readonly card: string | null;
  readonly lamp: LampName | null;
  readonly temperature: TypedTemperature | null;
  readonly humidity: number | null;
  readonly method: ReadingMethod;
  readonly milestone: MilestoneKind | null;
  readonly entry: EntryNo | null;
  readonly reason: string;
  readonly when: When;
}

/** Something is missing, or two things contradict each other. */
export interface Gap {
  readonly problem: string;
  /** Words that, added to the line, fill it; `choose` when each stands for what the person may have meant. */
  readonly add: readonly string[];
  readonly choose: boolean;
  /** Where the words go: after what was said, or right before the temperature. */
  readonly place: 'end' | 'before-temperature';
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
  readonly meaning: string;
  readonly example: (names: ExampleNames) => string;
  readonly build: (slots: Slots) => Built;
}

export const built = (command: Command): Built => ({ ok: true, command });
export const missing = (problem: string, ...add: readonly string[]): Built => gap({ problem, add, choose: false, place: 'end' });
export const choose = (problem: string, ...add: readonly string[]): Built => gap({ problem, add, choose: true, place: 'end' });
export const gap = (found: Gap): Built => ({ ok: false, gap: found });
