import type { Migration } from './migration.js';

/** Who looks at a home tab, so that it goes on being refreshed after a start. */
export const migration0005: Migration = {
  number: 5,
  sql: `
CREATE TABLE home_tab (
  chat_id TEXT PRIMARY KEY,
  at REAL NOT NULL
) STRICT, WITHOUT ROWID;
`,
};
