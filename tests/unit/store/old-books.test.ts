import Database from 'better-sqlite3';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { jobNo } from '../../../src/repair/ids.js';
import { openBook } from '../../../src/store/open.js';
import { backUp } from '../../../src/store/backup.js';
import { verifyBook } from '../../../src/store/verify.js';
import { tempFolder } from '../../support/temp-book.js';

/** Books as released versions of the program left them: one morning with three jobs, dumped as SQL. */
const STORED = [1, 2];

function storedBook(version: number): string {
  const folder = tempFolder();
  const db = new Database(join(folder, 'book.sqlite'));
  db.exec(readFileSync(new URL(`../../data/book-000${version}.sql`, import.meta.url), 'utf8'));
  db.close();
  return folder;
}

const factRows = (folder: string): unknown[] => {
  const db = new Database(join(folder, 'book.sqlite'), { readonly: true });
  const rows = db.prepare('SELECT seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body FROM fact ORDER BY seq').all();
  db.close();
  return rows;
};

describe.each(STORED)('a book of version %d', (version) => {
  it('keeps every fact through the change, is linked from then on, and goes on', () => {
    const folder = storedBook(version);
    const before = factRows(folder);
    const book = openBook(folder);
    expect(book.transact((tx) => tx.factsOf(jobNo('7203'))).length).toBeGreaterThan(4);
    book.close();
    expect(factRows(folder)).toEqual(before);
    expect(verifyBook(join(folder, 'book.sqlite'))).toMatchObject({ ok: true, damage: [], chain: { whole: true, facts: before.length } });
  });

  it('is not verified before the change, and says why', () => {
    expect(() => verifyBook(join(storedBook(version), 'book.sqlite'))).toThrow('older version');
  });
});

describe('a copy', () => {
  it('is verified, and never replaces a file', async () => {
    const folder = storedBook(2);
    openBook(folder).close();
    const to = join(folder, 'copies', 'one.sqlite');
    expect(await backUp(folder, to)).toMatchObject({ ok: true });
    await expect(backUp(folder, to)).rejects.toThrow('stands already');
    await expect(backUp(tempFolder(), to)).rejects.toThrow('no book');
  });

  it('of a damaged book says so', () => {
    const folder = storedBook(2);
    openBook(folder).close();
    const file = join(folder, 'book.sqlite');
    const pages = readFileSync(file);
    pages.fill(0xff, 4096 * 3, 4096 * 3 + 4096);
    writeFileSync(file, pages);
    let wrong = '';
    try {
      const { ok, damage } = verifyBook(file);
      wrong = ok ? '' : damage.join(' ');
    } catch (error) {
      wrong = String(error);
    }
    expect(wrong).not.toBe('');
  });
});
