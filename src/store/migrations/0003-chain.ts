import { FIRST_LINK, linkOf, type ChainedRow } from '../chain.js';
import type { Migration } from './migration.js';

/** Every fact is linked to the one before it, so that a quiet change shows (`chain.ts`). What stands in the book already is linked as it stands. */
export const migration0003: Migration = {
  number: 3,
  sql: `
DROP TRIGGER fact_is_never_changed;
ALTER TABLE fact ADD COLUMN link TEXT;
`,
  fill: (db) => {
    const write = db.prepare<[string, number]>('UPDATE fact SET link = ? WHERE seq = ?');
    let last = FIRST_LINK;
    for (const row of db.prepare<[], ChainedRow>('SELECT seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body FROM fact ORDER BY seq').all()) {
      last = linkOf(last, row);
      write.run(last, row.seq);
    }
  },
  after: `
CREATE TRIGGER fact_is_never_changed BEFORE UPDATE ON fact BEGIN
  SELECT RAISE(ABORT, 'a fact in the book is never changed');
END;
CREATE TRIGGER fact_is_always_linked BEFORE INSERT ON fact WHEN NEW.link IS NULL BEGIN
  SELECT RAISE(ABORT, 'a fact in the book is always linked');
END;
`,
};
