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
}

/** Everything the local page needs from the house. */
export interface PagePorts {
  readonly desk: Desk;
  readonly shop: Pick<Shop, 'name' | 'zone' | 'people'>;
  readonly clock: { now(): Instant; readonly practice: PracticeClock | null };
  health(): Health;
  /** Id of a message that came without an `Idempotency-Key`; never the same twice. */
  newId(): string;
  speaker(from: string): Speaker;
  /** Called with what nobody expected; the person at the page only hears that something failed. */
  report(error: unknown): void;
  /** Host names under which the page may be opened, besides 127.0.0.1, localhost and [::1]. */
  readonly allowedHosts?: readonly string[];
  /** Folder with the built page; stands beside this file unless said otherwise. */
  readonly staticDir?: string;
  /** Ends every open event stream, so that the server can close. */
  readonly closing?: AbortSignal;
}
