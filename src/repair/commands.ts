import type { MilestoneKind } from '../cure/card.js';
import type { Heater } from '../cure/history.js';
import type { Instant, Minutes } from '../cure/units.js';
import type { BuildUp } from '../cure/warm-up.js';
import type { EntryNo, JobNo, JointNo, LampName } from './ids.js';
import type { Entering } from './procedure.js';
import type { Role } from './shop.js';

/** A temperature as typed; without a unit it is the shop's unit, and may have to be asked about. */
export interface TypedTemperature {
  readonly value: number;
  readonly unit: 'C' | 'F' | null;
}

/**
 * When something happened, as typed. `20-30 min ago` has an earliest and a latest moment:
 * strength counts from the latest, open time from the earliest (rule R9).
 */
export interface When {
  readonly earliest: Instant;
  readonly latest: Instant;
  /** False when nothing was typed: then it is now. */
  readonly stated: boolean;
  /** True when the person was asked about an unusual time and said yes. */
  readonly confirmed: boolean;
  /** The person stays with the lamp past closing time; only said when asked. */
  readonly attended?: true;
}

/** How a reading was taken; a reading on bare shiny metal is kept and not counted. */
export type ReadingMethod = 'unstated' | 'contact' | 'tape' | 'bare';
export type CheckResult = 'hard' | 'soft';

/** What stands on the cartridge that a bead is laid from, as typed; null: not said. */
export interface CartridgeLabel {
  readonly batch: string | null;
  readonly expiry: string | null;
  readonly opened: string | null;
}

/** One figure of a step or of a cartridge, as typed. */
export interface EnteredFigure {
  readonly what: Entering;
  readonly text: string;
}

/** What a command is about; null is filled from the thread, the person's open question or the only running cure. */
export interface Subject {
  readonly job: JobNo | null;
  readonly joint: JointNo | null;
}

/** The shop's air, said in the same breath: `paste 31 P1 air 19`. */
export interface AirSaid {
  readonly value: TypedTemperature;
  readonly humidity: number | null;
}

/** Something about one cure, or about the air. `depth` is the bead's, in millimetres; null where nobody said. */
export type CureCommand =
  | (Subject & { readonly kind: 'paste'; readonly card: string | null; readonly depth: number | null; readonly air?: AirSaid; readonly label?: CartridgeLabel; /** Another cartridge or mix onto the joint that is open already. */ readonly again?: true; readonly when: When })
  | (Subject & { readonly kind: 'closed'; readonly card: string | null; readonly depth: number | null; readonly air?: AirSaid; readonly when: When })
  | (Subject & { readonly kind: 'moved'; readonly when: When })
  | (Subject & { readonly kind: 'cure'; readonly card: string | null; readonly depth: number | null; readonly setting: TypedTemperature | null; readonly heater: Heater; readonly lamp: LampName | null; readonly air?: AirSaid; readonly label?: CartridgeLabel; readonly when: When })
  /** `setting` null means "turned up": the next stage of the recipe. */
  | (Subject & { readonly kind: 'lamp'; readonly setting: TypedTemperature | null; readonly heater: Heater; readonly lamp: LampName | null; readonly when: When })
  /** `since: 'unknown'`: it was found off and nobody knows since when. */
  | (Subject & { readonly kind: 'off'; readonly lamp: LampName | null; readonly since: 'stated' | 'unknown'; /** On, and not over all of the joint: only the air counts. */ readonly part?: true; readonly when: When })
  /** Back on after it was off, or still on when asked. */
  | (Subject & { readonly kind: 'on'; readonly lamp: LampName | null; readonly when: When })
  | (Subject & { readonly kind: 'read'; readonly value: TypedTemperature; readonly method: ReadingMethod; /** In place of the speaker's last reading: `sorry 58`. */ readonly corrects?: true; readonly when: When })
  | { readonly kind: 'air'; readonly value: TypedTemperature; readonly humidity: number | null; readonly when: When }
  | (Subject & { readonly kind: 'check'; readonly milestone: MilestoneKind | null; readonly result: CheckResult; /** A bare ok or yes: it may answer another question as well. */ readonly yes?: true; /** `soft. lamp`: heat on top, and nobody said which lamp. */ readonly lampWanted?: true; readonly when: When })
  | (Subject & { readonly kind: 'later' })
  | (Subject & { readonly kind: 'depth'; readonly millimetres: number })
  | (Subject & { readonly kind: 'build-up'; readonly buildUp: BuildUp })
  /** It was another material all along. */
  | (Subject & { readonly kind: 'wrong-card'; readonly card: string })
  /** Somebody stays with the lamp past closing time: the speaker, or the person named `who`. */
  | (Subject & { readonly kind: 'stay'; readonly who?: string; /** Only that they are there, which at noon says nothing about the evening. */ readonly here?: true })
  | (Subject & { readonly kind: 'release'; readonly reason: string })
  | (Subject & { readonly kind: 'scrap'; readonly reason: string })
  | { readonly kind: 'undo'; readonly entry: EntryNo | null };

/** Something about a whole job, its steps, or the people. */
export type JobCommand =
  | (Subject & { readonly kind: 'begin'; readonly procedure: string | null })
  /** `step` as typed: a step's name or its first words; null: the step that is next. */
  | (Subject & { readonly kind: 'done'; readonly step: string | null; readonly when: When })
  | (Subject & { readonly kind: 'sign'; readonly step: string | null })
  | (Subject & { readonly kind: 'tap'; readonly step: string; readonly tap: number })
  /** `more`: what was typed behind it in the same line. */
  | (Subject & EnteredFigure & { readonly kind: 'enter'; readonly more?: readonly EnteredFigure[] })
  | (Subject & { readonly kind: 'hold'; readonly reason: string })
  | (Subject & { readonly kind: 'override'; readonly step: string | null; readonly reason: string })
  /** Hot work is about to begin. */
  | (Subject & { readonly kind: 'weld'; readonly when: When })
  /** Smoke, a smell of burning or fire, at a car or anywhere. */
  | (Subject & { readonly kind: 'smoke' })
  | (Subject & { readonly kind: 'hand'; readonly to: string })
  | { readonly kind: 'handover'; readonly to: string; readonly except: readonly JobNo[] }
  | { readonly kind: 'accept' }
  | { readonly kind: 'busy'; readonly minutes: Minutes }
  | { readonly kind: 'move'; readonly from: JobNo; readonly to: JobNo }
  | { readonly kind: 'adopt'; readonly person: string; readonly role: Role | null }
  | { readonly kind: 'turn-away'; readonly person: string };

export type EntryCommand = CureCommand | JobCommand;

export type QuestionCommand =
  | { readonly kind: 'who-waits' }
  | { readonly kind: 'lamps' }
  | (Subject & { readonly kind: 'next' })
  /** `can i sand 501`. */
  | (Subject & { readonly kind: 'may'; readonly deed: 'sand' | 'weld' | 'move' | 'bake' | 'fill' | 'unclamp' })
  | (Subject & { readonly kind: 'when' })
  | (Subject & { readonly kind: 'why' })
  /** What would come of other heat, of no heat (`unheated`), or of other air from a moment on; with none of them, of every heat the card knows. */
  | (Subject & { readonly kind: 'what-if'; readonly setting: TypedTemperature | null; readonly heater: Heater; readonly unheated: boolean; readonly air: TypedTemperature | null; readonly from: Instant | null })
  /** When a joint must be closed at the latest to be ready in time; `milestone` null: the last on the card. */
  | (Subject & { readonly kind: 'latest-start'; readonly card: string | null; readonly milestone: MilestoneKind | null; readonly depth: number | null; readonly readyBy: Instant })
  | { readonly kind: 'help' };

export type Command = EntryCommand | QuestionCommand;

const JOB_COMMANDS: Readonly<Record<JobCommand['kind'], true>> = { begin: true, done: true, sign: true, tap: true, enter: true, hold: true, override: true, weld: true, smoke: true, hand: true, handover: true, accept: true, busy: true, move: true, adopt: true, 'turn-away': true };
export const isJobCommand = (command: Command): command is JobCommand => command.kind in JOB_COMMANDS;
export type CommandKind = Command['kind'];
