import type { Speaker } from '../../clerk/message.js';
import type { Instant, Minutes } from '../../cure/units.js';
import type { Shop } from '../../repair/shop.js';
import type { Desk } from '../../clerk/desk.js';

/** Whether the clerk can work; further facts for the person who looks after it may stand beside `ok`. */
export interface Health {
  readonly ok: boolean;
  readonly [fact: string]: unknown;
}

/** A practice clock. A standing one moves only when it is advanced; advancing rings what comes due on the way. */
export interface PracticeClock {
  readonly standing: boolean;
  advance(by: Minutes): void;
  /** To the next moment at which something is planned, at the latest to `until`; false: there is neither. */
  advanceToNext(until: Instant | null): boolean;
}

/** A line that somebody of the practice shop says at its time. */
export interface DayLine {
  readonly at: Instant;
  readonly from: string;
  readonly say: string;
}

export type PracticeDay = readonly DayLine[];

/** Everything the local page needs from the house. */
export interface PagePorts {
  readonly desk: Desk;
  readonly shop: Pick<Shop, 'name' | 'zone' | 'people' | 'language'>;
  readonly clock: { now(): Instant; readonly practice: PracticeClock | null };
  health(): Health;
  /** Id of a message that came without an `Idempotency-Key`; never the same twice. */
  newId(): string;
  speaker(from: string): Speaker;
  /** What the people of the practice shop will say by themselves, in order; null outside a practice day. */
  readonly practiceDay: PracticeDay | null;
  /** Called with what nobody expected; the person at the page only hears that something failed. */
  report(error: unknown): void;
  /** Host names under which the page may be opened, besides 127.0.0.1, localhost and [::1]. */
  readonly allowedHosts?: readonly string[];
  /** Folder with the built page; stands beside this file unless said otherwise. */
  readonly staticDir?: string;
  /** Ends every open event stream, so that the server can close. */
  readonly closing?: AbortSignal;
}
