import type Database from 'better-sqlite3';
import { z } from 'zod';
import { BookError } from './book-error.js';
import { MIGRATIONS } from './migrations/index.js';
import { openTransactions } from './transactions.js';

/** Marks an SQLite file as a book of this program ("cclk"). */
const APPLICATION_ID = 0x63636c6b;
const NEWEST = MIGRATIONS.length;

const whole = z.int();
export const versionOf = (db: Database.Database): number => whole.parse(db.pragma('user_version', { simple: true }));
const idOf = (db: Database.Database): number => whole.parse(db.pragma('application_id', { simple: true }));

/** Refuses, without writing, a file that is not a book or was written by a newer version. */
export function refuseForeign(db: Database.Database, file: string): void {
  const version = versionOf(db);
  const tables = db.prepare<[], { n: number }>('SELECT count(*) AS n FROM sqlite_schema').get()?.n ?? 0;
  if (version === 0 && tables === 0) return;
  if (version === 0 || idOf(db) !== APPLICATION_ID) {
    throw new BookError('not-a-book', file, `${file} is not a book of this program. It was left as it is. Point CURECLERK_DATA to another folder, or move that file away.`);
  }
  if (version > NEWEST) {
    throw new BookError('newer-book', file, `${file} was written by a newer version of this program (book version ${version}; this program knows up to ${NEWEST}). It was left as it is. Start the newer version, or put back the copy made before the update.`);
  }
}

/** Brings the tables up to date, each step in one transaction; a step that another process has done is not repeated. */
export function migrate(db: Database.Database, file: string): void {
  refuseForeign(db, file);
  if (versionOf(db) === NEWEST) return;
  const { atomically } = openTransactions(db);
  for (const step of MIGRATIONS) {
    atomically(() => {
      if (versionOf(db) >= step.number) return;
      db.exec(step.sql);
      step.fill?.(db);
      if (step.after !== undefined) db.exec(step.after);
      db.pragma(`application_id = ${APPLICATION_ID}`);
      db.pragma(`user_version = ${step.number}`);
    });
  }
}
