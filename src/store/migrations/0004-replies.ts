import type { Migration } from './migration.js';

/** Answers whose buttons go once one of them was done. */
export const migration0004: Migration = {
  number: 4,
  sql: `
CREATE TABLE asked_reply (
  delivery TEXT PRIMARY KEY,
  job TEXT,
  reader TEXT NOT NULL,
  at REAL NOT NULL,
  answer TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX asked_reply_by_job ON asked_reply (job, at);
CREATE INDEX asked_reply_by_age ON asked_reply (at);
`,
};
