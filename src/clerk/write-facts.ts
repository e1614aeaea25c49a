import type { Instant } from '../cure/units.js';
import { outlooksOf } from '../repair/book.js';
import type { NewFact } from '../repair/decision.js';
import { composeSheet } from '../reply/compose/sheet.js';
import { remindersFor } from '../repair/due.js';
import { personId, type EntryNo, type JobNo, type PersonId } from '../repair/ids.js';
import { isLeftOn } from '../repair/left-on.js';
import { isOver } from '../repair/outlook.js';
import { isWalked } from '../repair/step-state.js';
import type { Answer } from '../reply/answer.js';
import { bookIn } from './loaded-book.js';
import type { DeskState } from './desk-ports.js';
import { shopIn } from './shop-in.js';
import type { BookTransaction } from './ports.js';

/** The bot's own entries stand under this name. */
export const CLERK = personId('clerk');

/** Stores facts as one entry and re-plans every job they reach, in the caller's transaction. */
export function writeFacts(tx: BookTransaction, desk: DeskState, facts: readonly NewFact[], by: PersonId, now: Instant): EntryNo {
  const entry = tx.nextEntry();
  tx.append(facts.map(({ job, happenedAt, by: first, fact }) => ({ entry, job, happenedAt, enteredAt: now, by: first ?? by, fact })));
  for (const { job } of facts) desk.shelf.forget(job);
  const wholeShop = facts.some(({ job, fact }) => job === null && fact.type !== 'bell' && fact.type !== 'adoption-asked');
  const jobs = [...(wholeShop ? tx.openJobs() : []), ...facts.flatMap(({ job }) => job ?? [])];
  for (const job of new Set(jobs)) replan(tx, desk, job, now);
  return entry;
}

/** Makes the stored reminders of a job what its facts say they are. */
export function replan(tx: BookTransaction, desk: DeskState, no: JobNo, now: Instant): void {
  const book = bookIn(tx, desk.shelf);
  const job = book.job(no);
  const shop = shopIn(tx, desk);
  const outlooks = job === null ? [] : outlooksOf(job, shop, book.air);
  tx.replan(no, outlooks.flatMap((outlook) => remindersFor(outlook, shop, now, book.people)));
  if (job !== null) keepSheet(tx, desk, no, composeSheet(no, outlooks, shop), now);
  tx.setOpen(no, outlooks.some((outlook) => !isOver(outlook) || isLeftOn(outlook, now)) || (job !== null && isWalked(job, outlooks, shop, book.air)));
}

/** The first message of the job's thread says how things stand; it is written anew only when that has changed. */
function keepSheet(tx: BookTransaction, { addressing }: DeskState, no: JobNo, sheet: Answer, now: Instant): void {
  const change = tx.keepSheet(no, sheet);
  if (change !== null) tx.queue(addressing.sheet(no, sheet, change, now));
}
