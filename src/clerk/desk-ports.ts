import type { MaterialCard } from '../cure/card.js';
import type { Procedure } from '../repair/procedure.js';
import type { Shop } from '../repair/shop.js';
import type { Addressing, BookStore, Clock } from './ports.js';
import type { JobShelf } from './loaded-book.js';

/** Where the clerk reports what no person at the desk can mend. */
export interface ClerkLog {
  warn(facts: object, words: string): void;
  error(facts: object, words: string): void;
}

/** Everything the clerk works with. */
export interface DeskPorts {
  readonly store: BookStore;
  readonly clock: Clock;
  readonly shop: Shop;
  readonly cards: readonly MaterialCard[];
  readonly procedures: readonly Procedure[];
  readonly addressing: Addressing;
  readonly log: ClerkLog;
  /** True when opening and closing bells come from the clock itself (practice), not from the daily schedule. */
  readonly clockRingsBells: boolean;
}

export interface DeskState extends DeskPorts {
  readonly shelf: JobShelf;
}

/** A shop without a remote chat: everything is read on the local page. */
export const NO_ADDRESSING: Addressing = { post: () => [], reply: () => [], answered: () => [], replied: () => [], sheet: () => [] };
