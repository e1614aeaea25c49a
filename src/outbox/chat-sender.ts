import type { OutboxRow } from '../clerk/ports.js';

/** Where a message stands on the platform. */
export interface Receipt {
  readonly channel: string;
  readonly ts: string;
}

/**
 * What became of one attempt. `refused`: never will be sent as it is. `failed`: certainly not sent, worth another try.
 * `not-yet`: it belongs to something that has not been sent itself. `limited`: certainly not sent, the platform named the pause. `unknown`: nobody can say; look it up before sending again.
 */
export type Outcome =
  | ({ readonly kind: 'sent' } & Receipt)
  | { readonly kind: 'refused'; readonly reason: string }
  | { readonly kind: 'failed'; readonly reason: string }
  | { readonly kind: 'not-yet' }
  | { readonly kind: 'limited'; readonly retryAfterSeconds: number }
  | { readonly kind: 'unknown'; readonly reason: string };

/** What a look-up of a delivery's key found. `never-told`: this kind of message leaves no trace to look for. */
export type Finding =
  | ({ readonly kind: 'found' } & Receipt)
  | { readonly kind: 'absent' }
  | { readonly kind: 'cannot-tell'; readonly reason: string }
  | { readonly kind: 'never-told'; readonly reason: string };

/** A remote chat as the dispatcher sees it. */
export interface ChatSender {
  send(row: OutboxRow): Promise<Outcome>;
  find(row: OutboxRow): Promise<Finding>;
}
