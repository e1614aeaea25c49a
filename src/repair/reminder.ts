import type { Instant } from '../cure/units.js';
import type { JobNo, PersonId } from './ids.js';
import type { CureRef } from './cure-ref.js';

/** What a post by the bot is about; other programs read these words in the feed. */
export const REMINDER_KINDS = ['open-limit', 'reading', 'still-on', 'handling', 'full', 'sand', 'drive-away', 'recoat-from', 'skin', 'through', 'flash-off', 'dwell', 'drip-free', 'dry', 'fire-watch', 'handover', 'stage', 'safety', 'decision'] as const;
export type ReminderKind = (typeof REMINDER_KINDS)[number];

/** How it reaches people: on its own, or inside the bundle at opening time. */
export type Route = 'alone' | 'bundle';

/**
 * Something that will have to be said. Derived from the facts, never kept by hand;
 * the key is natural: cure, kind, round (a re-armed check is a new round), step (which repeat).
 */
export interface Reminder {
  readonly key: string;
  readonly job: JobNo;
  readonly cure: CureRef;
  readonly kind: ReminderKind;
  readonly round: number;
  readonly step: number;
  /** The true due time of the matter. */
  readonly dueAt: Instant;
  /** When to say it: later than `dueAt` for repeats and for what waits for opening time. */
  readonly ringAt: Instant;
  readonly route: Route;
  readonly to: PersonId | 'channel';
}
