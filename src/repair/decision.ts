import type { MaterialCard, MilestoneKind } from '../cure/card.js';
import type { Celsius, Instant } from '../cure/units.js';
import type { Book } from './book.js';
import type { CureRef } from './cure-ref.js';
import type { Fact, FactRecord } from './facts.js';
import type { EntryNo, JobNo, LampName, PersonId, StepId } from './ids.js';
import type { Outlook } from './outlook.js';
import type { Procedure } from './procedure.js';
import type { Refusal } from './refusal.js';
import type { Shop } from './shop.js';
import type { Block } from './step-needs.js';
import type { Unfinished } from './unfinished.js';

/** Everything a decision may look at; time comes in as a value. */
export interface Situation {
  readonly now: Instant;
  readonly by: PersonId;
  readonly shop: Shop;
  readonly cards: readonly MaterialCard[];
  /** What a job can begin; a job that has begun keeps its own as it stood. */
  readonly procedures: readonly Procedure[];
  readonly book: Book;
  /** The job whose thread the message stands in. */
  readonly thread: JobNo | null;
  /** Own last entry that could be undone; and an entry by number, empty when it is unknown or undone already. */
  lastEntry(): { readonly entry: EntryNo; readonly facts: readonly FactRecord[] } | null;
  entry(no: EntryNo): readonly FactRecord[];
}

/** A fact before the store numbers it. */
export interface NewFact {
  readonly job: JobNo | null;
  readonly happenedAt: Instant;
  /** Who said it, where that is somebody else than whoever enters it now. */
  readonly by?: PersonId;
  readonly fact: Fact;
}

/** Something worth saying that does not follow from the book alone. */
export type Note =
  | { readonly note: 'already-confirmed'; readonly milestone: MilestoneKind; readonly by: PersonId; readonly at: Instant }
  | { readonly note: 'already-so' }
  | { readonly note: 'confirmed'; readonly milestone: MilestoneKind }
  | { readonly note: 'soft'; readonly milestone: MilestoneKind }
  /** Heat on top of soft: which lamp, at the card's hottest setting for that strength; without choices there is none to offer. */
  | { readonly note: 'lamp-wanted'; readonly setting: Celsius | null; readonly choices: readonly { readonly lamp: LampName; readonly line: string }[] }
  /** An apprentice's hard: a technician or the foreman has to say it too. */
  | { readonly note: 'first-check'; readonly milestone: MilestoneKind }
  /** Of a handover: somebody was quicker. */
  | { readonly note: 'already-accepted'; readonly by: PersonId; readonly at: Instant }
  | { readonly note: 'two-answers'; readonly milestone: MilestoneKind; readonly other: PersonId }
  /** Another card has a recipe with this lamp setting, and this one has no figure for it. */
  | { readonly note: 'other-recipe'; readonly card: string; readonly line: string }
  | { readonly note: 'part-covered' }
  | { readonly note: 'second-cartridge' }
  /** Somebody is with the lamp; whether past closing too was not said. */
  | { readonly note: 'here-now' }
  | { readonly note: 'bare-metal' }
  | { readonly note: 'stored-heat' }
  | { readonly note: 'over-maximum'; readonly value: Celsius; readonly maximum: Celsius }
  | { readonly note: 'below-stage'; readonly asked: Celsius }
  | { readonly note: 'pad-no-recipe' }
  /** The cure as it stood on the wrong card. */
  | { readonly note: 'card-changed'; readonly before: Outlook }
  /** The heat that is on is more than the card allows. */
  | { readonly note: 'lamp-over-maximum'; readonly setting: Celsius; readonly maximum: Celsius }
  | { readonly note: 'unchecked'; readonly milestone: MilestoneKind }
  | { readonly note: 'step-already'; readonly step: StepId; readonly by: PersonId; readonly at: Instant }
  /** Hot work is over, and its step of the procedure is not done. */
  | { readonly note: 'step-refused'; readonly refusal: Refusal }
  /** The date on the label has passed, or it has been open for more than so many `days`: the step is held. */
  | { readonly note: 'label-held'; readonly what: 'expiry' | 'opened'; readonly text: string; readonly days: number | null }
  | { readonly note: 'opened-long-ago'; readonly days: number }
  /** What an override lifted: what stood against a step (empty: a signature), or what the whole car waits for. */
  | { readonly note: 'lifted'; readonly blocks: readonly Block[]; readonly waits: readonly Unfinished[] }
  | { readonly note: 'undone'; readonly what: FactRecord };

export type Decision =
  | { readonly ok: true; readonly facts: readonly NewFact[]; readonly about: { readonly job: JobNo; readonly cure: CureRef } | null; readonly notes: readonly Note[] }
  | { readonly ok: false; readonly refusal: Refusal };

export const refuse = (refusal: Refusal): Decision => ({ ok: false, refusal });
