import Database from 'better-sqlite3';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Book } from './book.js';
import { namedTrouble } from './book-error.js';
import { makeFolder } from './make-folder.js';
import { migrate, refuseForeign } from './migrate.js';
import { sqliteBook } from './sqlite-book.js';

/** The book's name in its folder. */
export const BOOK_FILE = 'book.sqlite';
const BUSY_TIMEOUT_MS = 5000;

/**
 * Opens the book in `folder`, making both when they do not stand yet.
 * Every commit is on the disk before it returns.
 * @throws BookError naming the file, what is wrong and what to do.
 */
export function openBook(folder: string): Book {
  const file = join(folder, BOOK_FILE);
  makeFolder(folder);
  const db = opened(file);
  try {
    db.pragma('journal_mode = WAL');
    db.pragma('synchronous = FULL');
    db.pragma('foreign_keys = ON');
    migrate(db, file);
    return sqliteBook(db);
  } catch (error) {
    db.close();
    throw namedTrouble(error, file);
  }
}

function opened(file: string): Database.Database {
  try {
    if (existsSync(file)) lookFirst(file);
    return new Database(file, { timeout: BUSY_TIMEOUT_MS });
  } catch (error) {
    throw namedTrouble(error, file);
  }
}

/** Setting the journal mode already writes, so a file that must not be touched is found out before. */
function lookFirst(file: string): void {
  const db = new Database(file, { readonly: true, timeout: BUSY_TIMEOUT_MS });
  try {
    refuseForeign(db, file);
  } finally {
    db.close();
  }
}
