import type { Migration } from './migration.js';

/** The buttons under answers on the local page, so that a press is known to come from one. */
export const migration0006: Migration = {
  number: 6,
  sql: `
CREATE TABLE offer (
  reply TEXT PRIMARY KEY,
  at REAL NOT NULL,
  lines TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX offer_by_age ON offer (at);
CREATE INDEX post_by_key ON post (key);
`,
};
