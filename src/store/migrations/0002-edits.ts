import type { Migration } from './migration.js';

/** Questions that are edited once they are answered, and the sheet of each job. */
export const migration0002: Migration = {
  number: 2,
  sql: `
CREATE TABLE asked (
  post INTEGER PRIMARY KEY REFERENCES post (seq),
  job TEXT
) STRICT;
CREATE INDEX asked_by_job ON asked (job);

CREATE TABLE sheet (
  job TEXT PRIMARY KEY,
  change INTEGER NOT NULL,
  answer TEXT NOT NULL
) STRICT, WITHOUT ROWID;
`,
};
