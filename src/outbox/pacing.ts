import { backoffMs } from './backoff.js';

/** All waits of the dispatcher, in milliseconds. */
export interface Pacing {
  /** Between two sends in one lane: the platform takes about one message per second and channel. */
  readonly spacingMs: number;
  /** After an unknown outcome, before the first look-up: a slow server may still be writing the message. */
  readonly settleMs: number;
  /** How long `close` waits for what is in flight. */
  readonly drainMs: number;
  /** How often to look again while something stands waiting and no better moment is known. */
  readonly pollMs: number;
  /** Pause after failed try number `attempt` (from 1). */
  readonly backoff: (attempt: number) => number;
}

export const USUAL_PACING: Pacing = { spacingMs: 1_100, settleMs: 2_000, drainMs: 4_000, pollMs: 1_000, backoff: backoffMs };
