import type { MaterialCard, MilestoneKind } from '../cure/card.js';
import type { Heater } from '../cure/history.js';
import type { Celsius, Instant } from '../cure/units.js';
import type { BuildUp } from '../cure/warm-up.js';
import type { CartridgeLabel, CheckResult, ReadingMethod, TypedTemperature } from './commands.js';
import type { CureRef } from './cure-ref.js';
import type { EntryNo, JobNo, JointNo, LampName, PersonId, StepId } from './ids.js';
import type { CautionKind, Entering, Procedure } from './procedure.js';
import type { ReminderKind } from './reminder.js';
import type { Role } from './shop.js';

/** Things that happened to one job. Each says only what was known when it was entered. */
export type JobFact =
  /** The card as it stood at the start, frozen (rule R14). */
  | { readonly type: 'cure-opened'; readonly cure: CureRef; readonly card: MaterialCard; readonly owner: PersonId }
  /** `earliest` counts for the open time. */
  | { readonly type: 'pasted'; readonly cure: CureRef; readonly earliest: Instant }
  | { readonly type: 'closed'; readonly cure: CureRef }
  | { readonly type: 'moved'; readonly cure: CureRef }
  /** How deep the bead is. */
  | { readonly type: 'depth'; readonly cure: CureRef; readonly millimetres: number }
  /** What stands on the cartridge, as far as it was said with this entry. */
  | ({ readonly type: 'cartridge'; readonly cure: CureRef } & CartridgeLabel)
  /** How much metal the heat has to warm at this joint. */
  | { readonly type: 'build-up'; readonly joint: JointNo; readonly buildUp: BuildUp }
  /** It was another material all along: everything entered about `cure` holds for `as`, with this card. */
  | { readonly type: 'card-corrected'; readonly cure: CureRef; readonly as: CureRef; readonly card: MaterialCard }
  | { readonly type: 'lamp-set'; readonly joint: JointNo; readonly setting: Celsius; readonly typed: TypedTemperature; readonly lamp: LampName | null; readonly heater: Heater }
  /** `part`: it was on, and not over all of the joint. */
  | { readonly type: 'lamp-off'; readonly joint: JointNo; readonly part?: true | undefined }
  /** Found off at this moment; off since nobody knows when. */
  | { readonly type: 'lamp-found-off'; readonly joint: JointNo }
  /** Somebody saw it on: back after it was off, or still on. Which of the two follows from what stood before. */
  | { readonly type: 'lamp-on'; readonly joint: JointNo }
  /** A named person stays with the lamp past closing time; without this, heat stops counting at closing. `person`: somebody else than who entered it. */
  | { readonly type: 'attended'; readonly joint: JointNo; readonly person?: PersonId | undefined; /** There at that moment, while the shop is open; nothing is said about the evening. */ readonly here?: true | undefined }
  | { readonly type: 'reading'; readonly joint: JointNo; readonly value: Celsius; readonly typed: TypedTemperature; readonly method: ReadingMethod }
  | { readonly type: 'checked'; readonly cure: CureRef; readonly milestone: MilestoneKind; readonly result: CheckResult; readonly role: 'foreman' | 'apprentice' | 'other' }
  | { readonly type: 'put-off'; readonly cure: CureRef; readonly kind: ReminderKind }
  | { readonly type: 'released'; readonly cure: CureRef; readonly reason: string }
  | { readonly type: 'scrapped'; readonly cure: CureRef; readonly reason: string }
  /** The procedure as it stood, frozen. */
  | { readonly type: 'procedure-begun'; readonly procedure: Procedure }
  | { readonly type: 'step-done'; readonly step: StepId }
  | { readonly type: 'step-entered'; readonly step: StepId; readonly what: Entering; readonly text: string }
  /** `tap` counts from 0 in the step's list. */
  | { readonly type: 'step-tapped'; readonly step: StepId; readonly tap: number }
  | { readonly type: 'step-signed'; readonly step: StepId; readonly role: Role }
  /** `pastDew`: metal too close to the dew point stood against it, and that was decided with it; `pastLabel`: likewise the cartridge. */
  | { readonly type: 'step-overridden'; readonly step: StepId; readonly reason: string; readonly pastDew?: true | undefined; readonly pastLabel?: true | undefined }
  /** The whole job stands still until a foreman releases it. */
  | { readonly type: 'job-held'; readonly reason: string }
  | { readonly type: 'job-released'; readonly reason: string }
  /** Hot work begins on a joint or on the car. */
  | { readonly type: 'weld-begun'; readonly joint: JointNo | null }
  /** Hot work is over. `only`: what had begun at these moments; null: all that went on. */
  | { readonly type: 'weld-ended'; readonly only: readonly Instant[] | null }
  /** A caution of a step was shown to whoever entered this: with the step before it, or with the step itself at the latest. */
  | { readonly type: 'cautioned'; readonly step: StepId; readonly caution: CautionKind }
  /** Every cure of the job belongs to somebody else from now on. */
  | { readonly type: 'handed'; readonly to: PersonId }
  /** A cure was entered on the wrong job: it went to another one, or came from there; times are kept. */
  | { readonly type: 'moved-away'; readonly cure: CureRef; readonly toJob: JobNo }
  | { readonly type: 'moved-here'; readonly cure: CureRef; readonly fromJob: JobNo }
  /** A reminder was posted (or went into a bundle); the next repeat counts from here. */
  | { readonly type: 'reminder-raised'; readonly cure: CureRef; readonly kind: ReminderKind; readonly round: number; readonly step: number; readonly dueAt: Instant; readonly to: PersonId | 'channel' };

/** Things that happened to the shop, not to one job. */
export type ShopFact =
  | { readonly type: 'air'; readonly value: Celsius; readonly typed: TypedTemperature; readonly humidity: number | null }
  /** Counts from the other's acceptance; `entry` of the offer names it. */
  | { readonly type: 'handover-offered'; readonly to: PersonId; readonly jobs: readonly JobNo[] }
  | { readonly type: 'handover-accepted'; readonly offer: EntryNo }
  | { readonly type: 'busy'; readonly until: Instant }
  /** A stranger was taken on by the foreman. */
  | { readonly type: 'adopted'; readonly person: PersonId; readonly name: string; readonly role: Role }
  /** The foreman does not take this stranger on. */
  | { readonly type: 'adoption-refused'; readonly person: PersonId }
  /** The foreman was asked once whether to take this stranger on. */
  | { readonly type: 'adoption-asked'; readonly person: PersonId }
  /** Smoke or fire, and nobody said at which car. */
  | { readonly type: 'fire-reported' }
  | { readonly type: 'bell'; readonly bell: 'opening' | 'closing'; readonly dueAt: Instant; readonly posted: boolean };

/** An earlier entry no longer counts; both stay in the book. */
export interface UndoneFact {
  readonly type: 'undone';
  readonly entry: EntryNo;
}

export type Fact = JobFact | ShopFact | UndoneFact;

/** One line of the journal. */
export interface FactRecord {
  readonly entry: EntryNo;
  /** null: the whole shop. */
  readonly job: JobNo | null;
  readonly happenedAt: Instant;
  readonly enteredAt: Instant;
  /** Who entered it; `clerk` for what the bot wrote by itself. */
  readonly by: PersonId;
  readonly fact: Fact;
}
