import Database from 'better-sqlite3';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { BookError } from '../../../src/store/book-error.js';
import { holdFolder, type Holder } from '../../../src/store/hold-folder.js';
import { tempFolder } from '../../support/temp-book.js';

const ONE: Holder = { pid: 4711, host: 'counter', since: '2026-03-03T07:30:00.000Z' };
const OTHER: Holder = { pid: 4712, host: 'office', since: '2026-03-03T08:00:00.000Z' };

const refusalOf = (folder: string, who: Holder): BookError => {
  try {
    holdFolder(folder, who)();
  } catch (error) {
    if (error instanceof BookError) return error;
    throw error;
  }
  throw new Error('It was let in.');
};

it('a folder has one holder, and the next is told who it is', () => {
  const folder = join(tempFolder(), 'data');
  const letGo = holdFolder(folder, ONE);
  const { code, message } = refusalOf(folder, OTHER);
  letGo();
  expect(code).toBe('held-elsewhere');
  expect(message).toContain('process 4711 on counter, since 2026-03-03T07:30:00.000Z');
  expect(message).toContain('CURECLERK_DATA');
});

it('whoever lets go leaves it to the next', () => {
  const folder = tempFolder();
  holdFolder(folder, ONE)();
  const letGo = holdFolder(folder, OTHER);
  expect(refusalOf(folder, ONE).message).toContain('process 4712 on office');
  letGo();
});

it('two folders have nothing to do with each other', () => {
  const [one, other] = [holdFolder(tempFolder(), ONE), holdFolder(tempFolder(), OTHER)];
  one();
  other();
});

it('a holder that writes itself down at this moment is not named', () => {
  const folder = tempFolder();
  const db = new Database(join(folder, 'holder.sqlite'));
  db.exec('BEGIN EXCLUSIVE');
  expect(refusalOf(folder, ONE).message).toContain('kept by another clerk.');
  db.close();
});

it('a file that is no lock is named', () => {
  const folder = tempFolder();
  writeFileSync(join(folder, 'holder.sqlite'), 'a shopping list that is no database at all'.repeat(30));
  const { code, message } = refusalOf(folder, ONE);
  expect(code).toBe('not-opened');
  expect(message).toContain(join(folder, 'holder.sqlite'));
});
