import type { Instant } from '../cure/units.js';
import type { FactRecord } from '../repair/facts.js';
import type { EntryNo } from '../repair/ids.js';
import type { Situation } from '../repair/decision.js';
import type { DeskState } from './desk-ports.js';
import { bookIn } from './loaded-book.js';
import type { Message } from './message.js';
import type { BookTransaction } from './ports.js';

/** What a decision may look at, out of the transaction of this message. */
export function situationOf(tx: BookTransaction, desk: DeskState, message: Message, now: Instant): Situation {
  return {
    now,
    by: message.from.id,
    shop: desk.shop,
    cards: desk.cards,
    procedures: desk.procedures,
    book: bookIn(tx, desk.shelf),
    thread: message.thread,
    lastEntry: () => tx.lastEntryOf(message.from.id),
    entry: (no) => standingEntry(tx, desk, no),
  };
}

/** The facts of an entry; none when it is unknown or was taken back already. */
function standingEntry(tx: BookTransaction, desk: DeskState, no: EntryNo): readonly FactRecord[] {
  const facts = tx.factsOfEntry(no);
  const job = facts[0]?.job ?? null;
  const around = job === null ? desk.shelf.shopFacts(tx) : tx.factsOf(job);
  return around.some(({ fact }) => fact.type === 'undone' && fact.entry === no) ? [] : facts;
}
