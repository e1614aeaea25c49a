import type Database from 'better-sqlite3';
import type { BookTransaction } from '../clerk/ports.js';
import { jobNo } from '../repair/ids.js';

/** Jobs that wait for something, in the order of their numbers. */
export function openOpenJobs(db: Database.Database): Pick<BookTransaction, 'openJobs' | 'setOpen'> {
  const all = db.prepare<[], { job: string }>('SELECT job FROM open_job ORDER BY length(job), job');
  const add = db.prepare<[string]>('INSERT OR IGNORE INTO open_job (job) VALUES (?)');
  const remove = db.prepare<[string]>('DELETE FROM open_job WHERE job = ?');
  return {
    openJobs: () => all.all().map((row) => jobNo(row.job)),
    setOpen: (job, open) => {
      (open ? add : remove).run(job);
    },
  };
}
