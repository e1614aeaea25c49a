import Database from 'better-sqlite3';
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { FIRST_LINK, linkOf, walkChain } from '../../../src/store/chain.js';
import { CLOSED, enter } from '../../contract/store-samples.js';
import { openTempBook, tempFolder } from '../../support/temp-book.js';

const ROW = { seq: 1, entry: 1, job: '501', happened_at: 1772524800000, entered_at: 1772524800000.5, by_whom: 'tomek', type: 'closed', undoes: null, body: '{"type":"closed"}' };

/** A book with five facts, opened from outside with nothing that guards them. */
function unguarded(): Database.Database {
  const folder = tempFolder();
  const book = openTempBook(folder);
  for (let count = 0; count < 5; count += 1) enter(book, [CLOSED]);
  book.close();
  const db = new Database(join(folder, 'book.sqlite'));
  db.exec('DROP TRIGGER fact_is_never_changed; DROP TRIGGER fact_is_never_removed');
  return db;
}

describe('the link of a fact', () => {
  it('is SHA-256 of the link before, a line feed and the row, by the sha256sum of GNU coreutils too', () => {
    const text = `${FIRST_LINK}\n[1,1,"501",1772524800000,1772524800000.5,"tomek","closed",null,"{\\"type\\":\\"closed\\"}"]`;
    const outside = execFileSync('sha256sum', { input: text, encoding: 'utf8' }).split(' ')[0];
    expect(linkOf(FIRST_LINK, ROW)).toBe(outside);
  });

  it.each(Object.keys(ROW))('changes with %s', (column) => {
    expect(linkOf(FIRST_LINK, { ...ROW, [column]: column === 'undoes' ? 1 : 7 })).not.toBe(linkOf(FIRST_LINK, ROW));
  });

  it('changes with the link before it', () => {
    expect(linkOf('1'.repeat(64), ROW)).not.toBe(linkOf(FIRST_LINK, ROW));
  });
});

describe('the chain of a book', () => {
  it('is whole as the book was written', () => {
    const db = unguarded();
    expect(walkChain(db)).toMatchObject({ whole: true, facts: 5 });
    db.close();
  });

  it.each([
    ['a changed time', 'UPDATE fact SET happened_at = happened_at + 60000 WHERE seq = 3', { facts: 2, brokenAt: 3, why: 'changed' }],
    ['another name', "UPDATE fact SET by_whom = 'bo' WHERE seq = 5", { facts: 4, brokenAt: 5, why: 'changed' }],
    ['a fact taken out', 'DELETE FROM fact WHERE seq = 2', { facts: 1, brokenAt: 2, why: 'missing' }],
    ['a fact put in', 'INSERT INTO fact SELECT 6, entry, job, happened_at, entered_at, by_whom, type, undoes, body, link FROM fact WHERE seq = 5', { facts: 5, brokenAt: 6, why: 'changed' }],
    ['a new link on the old row', "UPDATE fact SET link = '1' WHERE seq = 4", { facts: 3, brokenAt: 4, why: 'changed' }],
  ])('shows %s', (_what, change, found) => {
    const db = unguarded();
    db.exec(change);
    expect(walkChain(db)).toEqual({ whole: false, ...found });
    db.close();
  });

  it('takes no fact without a link', () => {
    const db = unguarded();
    expect(() => db.exec('INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) SELECT 6, entry, job, happened_at, entered_at, by_whom, type, undoes, body FROM fact WHERE seq = 5')).toThrow('always linked');
    db.close();
  });
});
