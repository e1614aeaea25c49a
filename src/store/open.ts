import Database from 'better-sqlite3';
import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Book } from './book.js';
import { BookError } from './book-error.js';
import { migrate, refuseForeign } from './migrate.js';
import { sqliteBook } from './sqlite-book.js';

const FILE_NAME = 'book.sqlite';
const BUSY_TIMEOUT_MS = 5000;

/**
 * Opens the book in `folder`, making both when they do not stand yet.
 * Every commit is on the disk before it returns.
 * @throws BookError naming the file, what is wrong and what to do.
 */
export function openBook(folder: string): Book {
  const file = join(folder, FILE_NAME);
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
    throw named(error, file);
  }
}

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    throw new BookError('folder-not-made', folder, `The folder ${folder} for the book cannot be made: ${messageOf(error)}. Point CURECLERK_DATA to a folder this program may write to.`, error);
  }
}

function opened(file: string): Database.Database {
  try {
    if (existsSync(file)) lookFirst(file);
    return new Database(file, { timeout: BUSY_TIMEOUT_MS });
  } catch (error) {
    throw named(error, file);
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

function named(error: unknown, file: string): unknown {
  if (!(error instanceof Database.SqliteError)) return error;
  return new BookError('not-opened', file, `The book ${file} cannot be opened: ${error.message} (${error.code}). ${adviceFor(error.code)}`, error);
}

function adviceFor(code: string): string {
  if (code === 'SQLITE_NOTADB' || code.startsWith('SQLITE_CORRUPT')) return 'Put back the latest copy of the file, or move this one away.';
  if (code.startsWith('SQLITE_BUSY')) return 'Another program holds the file; stop it first.';
  return 'Check that this program may read and write the file and its folder, and that the disk has room.';
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
