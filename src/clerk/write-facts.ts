import type { Instant } from '../cure/units.js';
import { outlooksOf } from '../repair/book.js';
import type { NewFact } from '../repair/decision.js';
import { remindersFor } from '../repair/due.js';
import type { EntryNo, JobNo, PersonId } from '../repair/ids.js';
import { isOver } from '../repair/outlook.js';
import { bookIn } from './loaded-book.js';
import type { DeskState } from './desk-ports.js';
import type { BookTransaction } from './ports.js';

/** Stores facts as one entry and re-plans every job they reach, in the caller's transaction. */
export function writeFacts(tx: BookTransaction, desk: DeskState, facts: readonly NewFact[], by: PersonId, now: Instant): EntryNo {
  const entry = tx.nextEntry();
  tx.append(facts.map(({ job, happenedAt, fact }) => ({ entry, job, happenedAt, enteredAt: now, by, fact })));
  for (const { job } of facts) desk.shelf.forget(job);
  const wholeShop = facts.some(({ job, fact }) => job === null && fact.type !== 'bell');
  const jobs = wholeShop ? tx.openJobs() : facts.flatMap(({ job }) => job ?? []);
  for (const job of new Set(jobs)) replan(tx, desk, job, now);
  return entry;
}

/** Makes the stored reminders of a job what its facts say they are. */
export function replan(tx: BookTransaction, desk: DeskState, no: JobNo, now: Instant): void {
  const book = bookIn(tx, desk.shelf);
  const job = book.job(no);
  const outlooks = job === null ? [] : outlooksOf(job, desk.shop, book.air);
  tx.replan(no, outlooks.flatMap((outlook) => remindersFor(outlook, desk.shop, now)));
  tx.setOpen(no, outlooks.some((outlook) => !isOver(outlook)));
}
