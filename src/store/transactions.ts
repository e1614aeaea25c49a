import type Database from 'better-sqlite3';

export interface Transactions {
  /** Runs `work` in one immediate transaction of its own; a throw rolls everything back. */
  readonly alone: <T>(work: () => T) => T;
  /** The same, or as part of the transaction that is already open. */
  readonly atomically: <T>(work: () => T) => T;
}

/** Transactions never outlive one turn of the event loop, so `work` must not return a promise. */
export function openTransactions(db: Database.Database): Transactions {
  const begin = db.prepare('BEGIN IMMEDIATE');
  const commit = db.prepare('COMMIT');
  const rollback = db.prepare('ROLLBACK');

  const open = (): boolean => db.inTransaction;

  const alone = <T>(work: () => T): T => {
    if (open()) throw new Error('A transaction of the book is already open; use the one you have.');
    begin.run();
    try {
      const result = work();
      if (result instanceof Promise) throw new Error('A transaction of the book cannot wait for a promise.');
      commit.run();
      return result;
    } catch (error) {
      // A full disk may have rolled it back already.
      if (open()) rollback.run();
      throw error;
    }
  };
  return { alone, atomically: (work) => (open() ? work() : alone(work)) };
}
