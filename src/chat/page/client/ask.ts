import { isFields } from './read.js';

/** `refused` changed nothing; after `unreachable` nobody knows whether it arrived. */
export type Outcome<T> = { readonly kind: 'done'; readonly value: T } | { readonly kind: 'refused'; readonly detail: string | null } | { readonly kind: 'unreachable' };

const PATIENCE_MILLISECONDS = 15_000;

export interface Posting {
  readonly body: object;
  /** The same key twice is the same message. */
  readonly key: string | null;
}

/** Asks the server; with a posting it tells it something. */
export async function ask<T>(path: string, read: (value: unknown) => T, posting: Posting | null = null): Promise<Outcome<T>> {
  const response = await fetchOrNull(path, posting);
  if (response === null || response.status >= 500) return { kind: 'unreachable' };
  try {
    const value: unknown = await response.json();
    return response.ok ? { kind: 'done', value: read(value) } : { kind: 'refused', detail: detailOf(value) };
  } catch (error) {
    // Half an answer, or one in another shape than this page knows: what became of the request is unknown.
    reportError(error);
    return { kind: 'unreachable' };
  }
}

/** Null when there was no answer at all. */
const fetchOrNull = (path: string, posting: Posting | null): Promise<Response | null> =>
  fetch(path, { ...(posting === null ? {} : request(posting)), signal: AbortSignal.timeout(PATIENCE_MILLISECONDS) }).catch(() => null);

const request = ({ body, key }: Posting): RequestInit => ({
  method: 'POST',
  headers: { 'content-type': 'application/json', ...(key === null ? {} : { 'idempotency-key': key }) },
  body: JSON.stringify(body),
});

/** Null: refused without a word. */
const detailOf = (value: unknown): string | null => (isFields(value) && typeof value['detail'] === 'string' ? value['detail'] : null);
