import type { MaterialCard, MilestoneKind } from '../cure/card.js';
import type { Celsius, Instant } from '../cure/units.js';
import type { Heater } from '../cure/history.js';
import type { Hold } from './outlook.js';
import type { JobNo, JointNo, LampName, PersonId } from './ids.js';
import type { Role } from './shop.js';
import type { StepRefusal } from './step-refusal.js';

/** Why a command was not carried out. Nothing is stored; the answer says what to do. `line` is what a button would send. */
export type Refusal =
  | StepRefusal
  | { readonly code: 'which-job'; readonly choices: readonly { readonly job: JobNo; readonly line: string }[] }
  /** A bare yes, and more than one question is open: what yes would say to each, about which job. */
  | { readonly code: 'which-question'; readonly choices: readonly { readonly yes: 'hard' | 'on' | 'accept'; readonly job: JobNo | null; readonly line: string }[] }
  | { readonly code: 'unknown-job'; readonly job: JobNo; readonly choices: readonly { readonly job: JobNo; readonly line: string }[] }
  /** Not in the book, and an open job with two figures changed over is. */
  | { readonly code: 'new-job'; readonly job: JobNo; readonly choices: readonly { readonly job: JobNo; readonly line: string }[]; readonly newLine: string }
  | { readonly code: 'which-joint'; readonly job: JobNo; readonly choices: readonly { readonly joint: JointNo; readonly line: string }[] }
  | { readonly code: 'which-card'; readonly job: JobNo; readonly choices: readonly { readonly card: string; readonly line: string }[] }
  /** A card was named that does not run on this job. */
  | { readonly code: 'which-cure'; readonly job: JobNo; readonly named: string; readonly choices: readonly { readonly joint: JointNo; readonly card: string; readonly line: string }[] }
  | { readonly code: 'nothing-runs'; readonly job: JobNo }
  /** Cleared while the hot work goes on. */
  | { readonly code: 'still-hot'; readonly job: JobNo }
  /** `hard` where nothing but a fire watch is: that has a word of its own. */
  | { readonly code: 'watch-own-word'; readonly job: JobNo }
  /** What was entered there went to another job. */
  | { readonly code: 'moved-away'; readonly job: JobNo; readonly to: JobNo; readonly cards: readonly string[]; readonly at: Instant; readonly by: PersonId }
  | { readonly code: 'onto-itself'; readonly job: JobNo }
  | { readonly code: 'already-running'; readonly job: JobNo; readonly joint: JointNo; readonly card: string; readonly since: Instant; readonly otherJoint: string; /** More paste onto the same joint, as long as it is open. */ readonly cartridge: string | null }
  /** Another adhesive still cures on this car: a second joint, or the wrong job? */
  | { readonly code: 'second-cure'; readonly job: JobNo; readonly joint: JointNo; readonly card: string; readonly since: Instant; readonly otherJoint: string; readonly sameJoint: string }
  | { readonly code: 'already-closed'; readonly job: JobNo; readonly at: Instant; readonly line: string }
  | { readonly code: 'not-closed'; readonly job: JobNo; readonly line: string }
  | { readonly code: 'future'; readonly at: Instant; readonly nowLine: string; readonly yesterdayLine: string; readonly yesterday: Instant }
  | { readonly code: 'long-ago'; readonly at: Instant; readonly yesLine: string; readonly nowLine: string }
  | { readonly code: 'before-step'; readonly at: Instant; readonly step: 'pasted' | 'closed' | 'welded'; readonly stepAt: Instant }
  | { readonly code: 'which-unit'; readonly value: number; readonly maximum: Celsius; readonly asCelsius: Celsius | null; readonly line: string }
  | { readonly code: 'over-lamp-maximum'; readonly value: Celsius; readonly maximum: Celsius; readonly card: string }
  /** The next lamp stage before the check that ends the one before; `stays`: the lamp is on at that, and is left so. */
  | { readonly code: 'check-first'; readonly job: JobNo; readonly milestone: MilestoneKind; readonly dueAt: Instant | null; readonly line: string; readonly setting: Celsius; readonly card: MaterialCard; readonly stays: { readonly setting: Celsius; readonly line: string } | null }
  | { readonly code: 'hotter-than-lamp'; readonly job: JobNo; readonly value: Celsius; readonly setting: Celsius; readonly line: string }
  | { readonly code: 'air-too-hot'; readonly value: Celsius; readonly asCelsius: Celsius | null; readonly fahrenheitLine: string }
  | { readonly code: 'lamp-not-on-then'; readonly job: JobNo; readonly since: Instant | null }
  /** Needed longer than the shop is open, and nobody has said that they stay. `closes` null: it is closed already. */
  | { readonly code: 'lamp-alone'; readonly job: JobNo; readonly heater: Heater; readonly setting: Celsius; readonly ends: Instant; readonly closes: Instant | null; readonly stayLine: string; readonly airLine: string | null }
  | { readonly code: 'lamp-too-cold'; readonly value: Celsius }
  | { readonly code: 'no-next-stage'; readonly job: JobNo }
  | { readonly code: 'not-due'; readonly job: JobNo; readonly milestone: MilestoneKind; readonly dueAt: Instant | null; readonly share: number; readonly card: MaterialCard }
  | { readonly code: 'held'; readonly job: JobNo; readonly reason: Hold }
  | { readonly code: 'nothing-to-check'; readonly job: JobNo }
  | { readonly code: 'nothing-asked' }
  | { readonly code: 'no-heat'; readonly job: JobNo }
  | { readonly code: 'lamp-elsewhere'; readonly lamp: LampName; readonly heater: Heater; readonly job: JobNo; readonly line: string }
  /** No lamp was named, and every one that the shop owns heats another job: where each is, and the line that moves it. */
  | { readonly code: 'which-lamp'; readonly heater: Heater; readonly job: JobNo; readonly choices: readonly { readonly lamp: LampName; readonly on: JobNo; readonly line: string }[] }
  /** No lamp or pad of this name; `isOther`: a pad was called a lamp, or a lamp a pad. */
  | { readonly code: 'unknown-lamp'; readonly lamp: string; readonly heater: Heater; readonly isOther: boolean }
  | { readonly code: 'same-card'; readonly job: JobNo; readonly card: string }
  | { readonly code: 'card-runs-there'; readonly job: JobNo; readonly joint: JointNo; readonly card: string; readonly since: Instant }
  /** The wrong card may have been any of these. */
  | { readonly code: 'two-cures-there'; readonly job: JobNo; readonly joint: JointNo; readonly cards: readonly string[] }
  | { readonly code: 'no-depth'; readonly card: string }
  | { readonly code: 'odd-depth'; readonly millimetres: number; readonly least: number; readonly most: number }
  /** Not one of the shop's people: may ask, enters nothing. */
  | { readonly code: 'stranger'; readonly person: PersonId; readonly foreman: PersonId | 'channel' }
  | { readonly code: 'wrong-role'; readonly role: Role; readonly may: readonly Role[] }
  /** `typed` as somebody wrote it; `known`: who could have been meant. */
  | { readonly code: 'unknown-person'; readonly typed: string; readonly known: readonly PersonId[] }
  /** Nobody to refuse: they are on the list. */
  | { readonly code: 'one-of-us'; readonly person: PersonId }
  | { readonly code: 'cannot-take'; readonly person: PersonId; readonly role: Role }
  | { readonly code: 'to-yourself' }
  /** None of the giver's jobs is open, or none is left after `except`. */
  | { readonly code: 'nothing-to-hand' }
  /** Jobs to be kept that are not among the giver's open ones. */
  | { readonly code: 'not-in-handover'; readonly jobs: readonly JobNo[] }
  | { readonly code: 'nothing-offered' }
  | { readonly code: 'offered-to-another'; readonly to: PersonId }
  | { readonly code: 'too-long-busy'; readonly most: number }
  | { readonly code: 'foreman-only'; readonly foreman: PersonId | 'channel' }
  | { readonly code: 'nothing-held'; readonly job: JobNo }
  | { readonly code: 'nothing-to-undo' }
  | { readonly code: 'undo-too-late'; readonly enteredAt: Instant }
  | { readonly code: 'not-yours'; readonly by: PersonId }
  /** What was to be taken back went to another job with everything else. */
  | { readonly code: 'went-along'; readonly job: JobNo; readonly at: Instant; readonly by: PersonId };
