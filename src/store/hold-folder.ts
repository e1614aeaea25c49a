import Database from 'better-sqlite3';
import { join } from 'node:path';
import { z } from 'zod';
import { BookError, namedTrouble } from './book-error.js';
import { makeFolder } from './make-folder.js';

const FILE_NAME = 'holder.sqlite';
/** A clerk that is just being stopped lets go within this time. */
const WAIT_MS = 1000;

/** Who keeps a data folder: a process, and since when. */
export interface Holder {
  readonly pid: number;
  readonly host: string;
  readonly since: string;
}

const holderSchema = z.strictObject({ pid: z.int(), host: z.string(), since: z.string() });

/**
 * Keeps `folder` for this process until the returned function is called or the process ends, however it ends: the lock is
 * SQLite's own on a file beside the book, and the operating system lets go of it.
 * @throws BookError `held-elsewhere`, saying who has the folder.
 */
export function holdFolder(folder: string, me: Holder): () => void {
  makeFolder(folder);
  const db = opened(join(folder, FILE_NAME));
  try {
    keep(db, me);
  } catch (error) {
    const trouble = isBusy(error) ? heldElsewhere(folder, readHolder(db), error) : namedTrouble(error, db.name);
    db.close();
    throw trouble;
  }
  return () => { db.close(); };
}

function opened(file: string): Database.Database {
  try {
    return new Database(file, { timeout: WAIT_MS });
  } catch (error) {
    throw namedTrouble(error, file);
  }
}

/** Written down first, so that others can read it; then nobody else may write until this connection closes. */
function keep(db: Database.Database, { pid, host, since }: Holder): void {
  db.exec('BEGIN IMMEDIATE; CREATE TABLE IF NOT EXISTS holder (only INTEGER PRIMARY KEY CHECK (only = 1), pid INTEGER NOT NULL, host TEXT NOT NULL, since TEXT NOT NULL) STRICT');
  db.prepare('INSERT OR REPLACE INTO holder (only, pid, host, since) VALUES (1, ?, ?, ?)').run(pid, host, since);
  db.exec('COMMIT; BEGIN IMMEDIATE');
}

/** Null: it is being written at this moment. */
function readHolder(db: Database.Database): Holder | null {
  if (db.inTransaction) db.exec('ROLLBACK');
  try {
    return holderSchema.parse(db.prepare('SELECT pid, host, since FROM holder').get());
  } catch (error) {
    if (error instanceof Database.SqliteError || error instanceof z.ZodError) return null;
    throw error;
  }
}

const isBusy = (error: unknown): boolean => error instanceof Database.SqliteError && error.code.startsWith('SQLITE_BUSY');

function heldElsewhere(folder: string, holder: Holder | null, cause: unknown): BookError {
  const who = holder === null ? 'another clerk' : `another clerk (process ${holder.pid} on ${holder.host}, since ${holder.since})`;
  return new BookError('held-elsewhere', folder, `The data folder ${folder} is kept by ${who}. Two clerks on one book would remind twice. Stop that one first, or name another folder in CURECLERK_DATA.`, cause);
}
