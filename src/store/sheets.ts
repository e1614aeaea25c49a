import type Database from 'better-sqlite3';
import type { BookTransaction } from '../clerk/ports.js';

/** What the sheet of each job says, and how often that has changed. */
export function openSheets(db: Database.Database): Pick<BookTransaction, 'keepSheet'> {
  const keep = db.prepare<[string, string], { change: number }>(
    `INSERT INTO sheet (job, change, answer) VALUES (?, 1, ?)
     ON CONFLICT (job) DO UPDATE SET change = change + 1, answer = excluded.answer WHERE answer <> excluded.answer
     RETURNING change`,
  );
  return { keepSheet: (job, answer) => keep.get(job, JSON.stringify(answer))?.change ?? null };
}
