import { createHash } from 'node:crypto';
import type Database from 'better-sqlite3';

/** One row of the journal as it is written, in the order in which it is hashed. */
export interface ChainedRow {
  readonly seq: number;
  readonly entry: number;
  readonly job: string | null;
  readonly happened_at: number;
  readonly entered_at: number;
  readonly by_whom: string;
  readonly type: string;
  readonly undoes: number | null;
  readonly body: string;
}

/** What the first fact of a book is linked to. */
export const FIRST_LINK = '0'.repeat(64);

/**
 * The link of a fact: SHA-256 (FIPS 180-4), in hexadecimal, of the link before it, a line feed, and the row as a JSON
 * array (RFC 8259) with numbers in their shortest form and without white space. Whoever changes a fact, takes one out or
 * puts one in changes every link after it.
 */
export function linkOf(before: string, { seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body }: ChainedRow): string {
  const row = JSON.stringify([seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body]);
  return createHash('sha256').update(`${before}\n${row}`).digest('hex');
}

/** How the chain of a book stands: the number of facts and the last link, or the first fact that does not fit. */
export type ChainState =
  | { readonly whole: true; readonly facts: number; readonly last: string }
  | { readonly whole: false; readonly facts: number; readonly brokenAt: number; readonly why: 'changed' | 'missing' };

/** Walks the whole journal. */
export function walkChain(db: Database.Database): ChainState {
  const rows = db.prepare<[], ChainedRow & { readonly link: string | null }>('SELECT seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body, link FROM fact ORDER BY seq');
  let last = FIRST_LINK;
  let facts = 0;
  for (const row of rows.iterate()) {
    if (row.seq !== facts + 1) return { whole: false, facts, brokenAt: facts + 1, why: 'missing' };
    if (row.link !== linkOf(last, row)) return { whole: false, facts, brokenAt: row.seq, why: 'changed' };
    last = row.link;
    facts += 1;
  }
  return { whole: true, facts, last };
}
