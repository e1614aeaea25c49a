import type Database from 'better-sqlite3';
import type { BookStore } from '../clerk/ports.js';
import { instant } from '../cure/units.js';

/** The latest moment the book knows of. Asked once at a start, so it may look through everything. */
export function openLastMoment(db: Database.Database): Pick<BookStore, 'latestInstant' | 'saveClock' | 'timeKept' | 'keepTime'> {
  const latest = db.prepare<[], { at: number | null }>(
    `SELECT max(at) AS at FROM (
       SELECT max(entered_at) AS at FROM fact
       UNION ALL SELECT max(at) FROM post
       UNION ALL SELECT value FROM meta WHERE name = 'clock')`,
  );
  const save = db.prepare<[number]>("INSERT INTO meta (name, value) VALUES ('clock', ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value");
  const kept = db.prepare<[], { practice: number | null; clock: number | null; entered: number }>(
    `SELECT (SELECT value FROM meta WHERE name = 'practice') AS practice, (SELECT value FROM meta WHERE name = 'clock') AS clock, EXISTS (SELECT 1 FROM fact) AS entered`,
  );
  const keep = db.prepare<[number]>("INSERT INTO meta (name, value) VALUES ('practice', ?) ON CONFLICT (name) DO NOTHING");
  return {
    latestInstant: () => {
      const at = latest.get()?.at ?? null;
      return at === null ? null : instant(at);
    },
    saveClock: (at) => {
      save.run(at);
    },
    timeKept: () => {
      const { practice, clock, entered } = kept.get() ?? { practice: null, clock: null, entered: 0 };
      if (practice !== null) return practice === 1 ? 'practice' : 'real';
      // A book from before this was noted: only a practice clock left its position.
      return clock !== null ? 'practice' : entered === 1 ? 'real' : null;
    },
    keepTime: (kind) => {
      keep.run(kind === 'practice' ? 1 : 0);
    },
  };
}
