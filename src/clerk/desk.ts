import type { Message, MessageId, Post } from './message.js';
import type { Heater } from '../cure/history.js';
import type { Instant } from '../cure/units.js';
import type { MilestoneKind } from '../cure/card.js';
import type { PersonId } from '../repair/ids.js';
import type { Refusal } from '../repair/refusal.js';
import type { Answer } from '../reply/answer.js';
import type { HomeBoard } from '../reply/compose/home.js';

/** The answer to one message. */
export interface Reply {
  readonly id: string;
  readonly answer: Answer;
  /** Why nothing was stored, where the line could have stored something; `misread`: it could not be read. */
  readonly fault?: Fault;
}

export type Fault = Refusal['code'] | 'misread';

/** What a form for a new cure offers, with what this person entered last. */
export interface CureForm {
  readonly cards: readonly { readonly name: string; readonly title: string; readonly needsDepth: boolean }[];
  readonly lamps: readonly string[];
  readonly pads: readonly string[];
  readonly last: {
    readonly card: string | null;
    /** `setting` as typed, `35` or `95F`; null: no heat was entered yet. */
    readonly heat: { readonly heater: Heater; readonly name: string | null; readonly setting: string } | null;
  };
}

export type MilestoneState = 'running' | 'due' | 'confirmed' | 'held' | 'asleep';

export interface MilestoneSheet {
  readonly kind: MilestoneKind | 'open-limit';
  readonly dueAt: Instant | null;
  readonly state: MilestoneState;
  /** Done part of the wait, 0 to 1. */
  readonly share: number;
}

export interface CureSheet {
  readonly joint: string;
  readonly card: string;
  readonly milestones: readonly MilestoneSheet[];
}

export interface JobSheet {
  readonly job: string;
  readonly cures: readonly CureSheet[];
}

/** One car that waits, worst first (rule R26). */
export interface WaitingCar {
  readonly job: string;
  readonly joint: string;
  readonly card: string;
  readonly waitsFor: MilestoneKind | 'open-limit' | 'decision';
  readonly state: MilestoneState;
  readonly dueAt: Instant | null;
  readonly owner: string;
  /** `lamp 30 (A)`, `air 20`, `asleep, 12 °C`: what heats it, in words. */
  readonly heat: string;
}

/** The desk as a chat sees it: one way in, and what may be looked at. */
export interface Desk {
  say(message: Message): Reply;
  /** `reader`: whose words they are; the shop's unless somebody is named. */
  waiting(reader?: PersonId): readonly WaitingCar[];
  jobSheet(job: string): JobSheet | null;
  cureForm(person: PersonId): CureForm;
  /** What this person sees without asking: own cures and every car that waits, worst first. */
  home(person: PersonId): HomeBoard;
  postsAfter(seq: number, limit: number): readonly Post[];
  /** Called after every commit that changed the book or wrote posts; returns how to stop listening. */
  onChange(listener: () => void): () => void;
  /** Whether a message with this id was already handled. */
  knows(id: MessageId): boolean;
  /** The lines of the buttons that stood under an answer on the page, or under a post; null: there is no such answer, or none any more. */
  offeredUnder(reply: string): readonly string[] | null;
  /** Whether this line could be read now, whatever would then be decided about it; changes nothing. */
  understands(line: string): boolean;
}
