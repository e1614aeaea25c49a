import type Database from 'better-sqlite3';
import type { BookStore } from '../clerk/ports.js';
import { instant } from '../cure/units.js';

/** The latest moment the book knows of. Asked once at a start, so it may look through everything. */
export function openLastMoment(db: Database.Database): Pick<BookStore, 'latestInstant' | 'saveClock'> {
  const latest = db.prepare<[], { at: number | null }>(
    `SELECT max(at) AS at FROM (
       SELECT max(entered_at) AS at FROM fact
       UNION ALL SELECT max(at) FROM post
       UNION ALL SELECT value FROM meta WHERE name = 'clock')`,
  );
  const save = db.prepare<[number]>("INSERT INTO meta (name, value) VALUES ('clock', ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value");
  return {
    latestInstant: () => {
      const at = latest.get()?.at ?? null;
      return at === null ? null : instant(at);
    },
    saveClock: (at) => {
      save.run(at);
    },
  };
}
