import { readLine } from '../grammar/read-line.js';
import type { Read } from '../grammar/reading.js';
import type { Instant } from '../cure/units.js';
import type { Procedure } from '../repair/procedure.js';
import type { DeskState } from './desk-ports.js';
import { isWithinCard } from '../repair/within-card.js';
import { bookIn } from './loaded-book.js';
import type { BookTransaction } from './ports.js';

type Desk = Pick<DeskState, 'shop' | 'cards' | 'shelf'> & { readonly procedures?: readonly Procedure[] };

/** One line as it reads at this desk at this moment; nothing is stored. */
export const readAtDesk = (tx: BookTransaction, { shop, cards, shelf, procedures = [] }: Desk, line: string, now: Instant): Read =>
  readLine(line, { now, zone: shop.zone, cards: cards.map((card) => card.name), lamps: shop.lamps, pads: shop.pads, openJobs: tx.openJobs(), procedures: procedures.map((procedure) => procedure.name), allows: (command) => isWithinCard(command, { book: bookIn(tx, shelf), cards, shop }) });
