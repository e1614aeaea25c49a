import type { MaterialCard, MilestoneKind } from '../cure/card.js';
import type { Heater } from '../cure/history.js';
import type { Celsius, Instant } from '../cure/units.js';
import type { BuildUp } from '../cure/warm-up.js';
import type { CheckResult, ReadingMethod, TypedTemperature } from './commands.js';
import type { CureRef } from './cure-ref.js';
import type { EntryNo, JobNo, JointNo, LampName, PersonId } from './ids.js';
import type { ReminderKind } from './reminder.js';

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
  /** How much metal the heat has to warm at this joint. */
  | { readonly type: 'build-up'; readonly joint: JointNo; readonly buildUp: BuildUp }
  /** It was another material all along: everything entered about `cure` holds for `as`, with this card. */
  | { readonly type: 'card-corrected'; readonly cure: CureRef; readonly as: CureRef; readonly card: MaterialCard }
  | { readonly type: 'lamp-set'; readonly joint: JointNo; readonly setting: Celsius; readonly typed: TypedTemperature; readonly lamp: LampName | null; readonly heater: Heater }
  | { readonly type: 'lamp-off'; readonly joint: JointNo }
  /** Found off at this moment; off since nobody knows when. */
  | { readonly type: 'lamp-found-off'; readonly joint: JointNo }
  /** Somebody saw it on: back after it was off, or still on. Which of the two follows from what stood before. */
  | { readonly type: 'lamp-on'; readonly joint: JointNo }
  /** A named person stays with the lamp past closing time; without this, heat stops counting at closing. */
  | { readonly type: 'attended'; readonly joint: JointNo }
  | { readonly type: 'reading'; readonly joint: JointNo; readonly value: Celsius; readonly typed: TypedTemperature; readonly method: ReadingMethod }
  | { readonly type: 'checked'; readonly cure: CureRef; readonly milestone: MilestoneKind; readonly result: CheckResult; readonly role: 'foreman' | 'other' }
  | { readonly type: 'put-off'; readonly cure: CureRef; readonly kind: ReminderKind }
  | { readonly type: 'released'; readonly cure: CureRef; readonly reason: string }
  | { readonly type: 'scrapped'; readonly cure: CureRef; readonly reason: string }
  /** A reminder was posted (or went into a bundle); the next repeat counts from here. */
  | { readonly type: 'reminder-raised'; readonly cure: CureRef; readonly kind: ReminderKind; readonly round: number; readonly step: number; readonly dueAt: Instant; readonly to: PersonId | 'channel' };

/** Things that happened to the shop, not to one job. */
export type ShopFact =
  | { readonly type: 'air'; readonly value: Celsius; readonly typed: TypedTemperature; readonly humidity: number | null }
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
