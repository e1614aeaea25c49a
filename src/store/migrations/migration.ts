import type Database from 'better-sqlite3';

/** One released change of the book's tables. Never edited after a release; a later change is a new number. */
export interface Migration {
  readonly number: number;
  readonly sql: string;
  /** What no SQL can work out, after `sql` and in the same transaction. */
  readonly fill?: (db: Database.Database) => void;
  /** Follows `fill`. */
  readonly after?: string;
}
