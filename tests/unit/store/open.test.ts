import Database from 'better-sqlite3';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { BookError, type BookErrorCode } from '../../../src/store/book-error.js';
import { openBook } from '../../../src/store/open.js';
import { CLOSED, enter, JOB } from '../../contract/store-samples.js';
import { openTempBook, tempFolder } from '../../support/temp-book.js';

const errorOf = (folder: string): BookError => {
  try {
    openBook(folder).close();
  } catch (error) {
    if (error instanceof BookError) return error;
    throw error;
  }
  throw new Error('It opened.');
};

const expectRefusal = (folder: string, code: BookErrorCode, named: string): void => {
  const error = errorOf(folder);
  expect(error.code).toBe(code);
  expect(error.message).toContain(named);
};

describe('opening the book', () => {
  it('makes the folder and keeps what was entered', () => {
    const folder = join(tempFolder(), 'deep', 'data');
    const first = openBook(folder);
    enter(first, [CLOSED]);
    first.close();
    expect(openTempBook(folder).transact((tx) => tx.factsOf(JOB))).toHaveLength(1);
  });

  it('lets two connections write one after the other', () => {
    const folder = tempFolder();
    const [one, other] = [openTempBook(folder), openTempBook(folder)];
    expect([enter(one, [CLOSED]), enter(other, [CLOSED]), enter(one, [CLOSED])]).toEqual([1, 2, 3]);
  });

  it('uses the write-ahead log, which survives in the file', () => {
    const folder = tempFolder();
    openTempBook(folder);
    const db = new Database(join(folder, 'book.sqlite'), { readonly: true });
    expect(db.pragma('journal_mode', { simple: true })).toBe('wal');
    db.close();
  });

  it('never lets a fact be changed or removed', () => {
    const folder = tempFolder();
    enter(openTempBook(folder), [CLOSED]);
    const db = new Database(join(folder, 'book.sqlite'));
    expect(() => db.exec("UPDATE fact SET job = '1'")).toThrow('never changed');
    expect(() => db.exec('DELETE FROM fact')).toThrow('never removed');
    db.close();
  });

  it('names a fact that was damaged in the file', () => {
    const folder = tempFolder();
    const book = openTempBook(folder);
    enter(book, [CLOSED]);
    const db = new Database(join(folder, 'book.sqlite'));
    db.exec("DROP TRIGGER fact_is_never_changed; UPDATE fact SET body = '{}'");
    db.close();
    expect(() => book.transact((tx) => tx.factsOf(JOB))).toThrow('Fact 1 (entry 1) in the book cannot be read');
  });

  it('refuses a folder that cannot be made', () => {
    const file = join(tempFolder(), 'file');
    writeFileSync(file, '');
    expectRefusal(join(file, 'data'), 'folder-not-made', join(file, 'data'));
  });

  it('refuses a file that is no database, and leaves it', () => {
    const folder = tempFolder();
    const file = join(folder, 'book.sqlite');
    writeFileSync(file, 'a shopping list, long enough to be taken for a page header if nobody looks'.repeat(20));
    const before = readFileSync(file);
    expectRefusal(folder, 'not-opened', file);
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  it.each<[string, BookErrorCode, string]>([
    ['a newer book', 'newer-book', 'PRAGMA user_version = 99'],
    ['the database of another program', 'not-a-book', 'PRAGMA application_id = 7'],
    ['an unmarked database', 'not-a-book', 'PRAGMA user_version = 0'],
  ])('refuses %s, and leaves it untouched', (_what, code, change) => {
    const folder = tempFolder();
    const file = join(folder, 'book.sqlite');
    openBook(folder).close();
    const db = new Database(file);
    db.exec(change);
    db.pragma('journal_mode = DELETE');
    db.close();
    const before = readFileSync(file);
    expectRefusal(folder, code, file);
    expect(readFileSync(file).equals(before)).toBe(true);
    expect(existsSync(`${file}-wal`)).toBe(false);
  });

  it('finds a newer version that stands in the write-ahead log only, and leaves both files untouched', () => {
    const folder = tempFolder();
    const file = join(folder, 'book.sqlite');
    openBook(folder).close();
    const db = new Database(file);
    db.exec('PRAGMA user_version = 99');
    const files = [file, `${file}-wal`];
    const before = files.map((name) => readFileSync(name));
    // The connection above stays open, as after a crash: nothing has been taken over from the log.
    expectRefusal(folder, 'newer-book', 'book version 99');
    expect(files.map((name, index) => before[index]?.equals(readFileSync(name)))).toEqual([true, true]);
    db.close();
  });
});
