import Database from 'better-sqlite3';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { migrate } from '../../../src/store/migrate.js';
import { MIGRATIONS } from '../../../src/store/migrations/index.js';
import { openBook } from '../../../src/store/open.js';
import { tempFolder } from '../../support/temp-book.js';

const NEWEST_DUMP = new URL('../../data/schema-0006.sql', import.meta.url);

/** The tables as SQLite keeps them; a change without a migration shows here. */
const dumpOf = (db: Database.Database): string =>
  db.prepare<[], { sql: string }>('SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name').all().map(({ sql }) => `${sql};\n`).join('');

describe('migrations', () => {
  it('are numbered 1, 2, 3 …', () => {
    expect(MIGRATIONS.map(({ number }) => number)).toEqual(MIGRATIONS.map((_, index) => index + 1));
  });

  it('lead to the released schema', () => {
    const folder = tempFolder();
    openBook(folder).close();
    const db = new Database(join(folder, 'book.sqlite'), { readonly: true });
    const dump = dumpOf(db);
    db.close();
    expect(dump).toBe(readFileSync(NEWEST_DUMP, 'utf8'));
  });

  it('change nothing the second time', () => {
    const db = new Database(':memory:');
    migrate(db, 'book.sqlite');
    const before = db.serialize();
    migrate(db, 'book.sqlite');
    expect(db.serialize().equals(before)).toBe(true);
    db.close();
  });

  it('leave nothing behind when a step fails', () => {
    const db = new Database(':memory:');
    // The disk is full after three pages.
    db.pragma('max_page_count = 3');
    expect(() => { migrate(db, 'book.sqlite'); }).toThrow();
    expect(dumpOf(db)).toBe('');
    expect(db.pragma('user_version', { simple: true })).toBe(0);
    db.close();
  });
});
