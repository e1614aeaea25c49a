import type { Instant } from '../cure/units.js';
import type { Book } from './book.js';
import { outlooksOf } from './book.js';
import type { JobNo } from './ids.js';
import { heatAt, isOver, type Outlook } from './outlook.js';
import type { Shop } from './shop.js';
import { isFireWatch } from './watch-card.js';

/** Nothing waits any more, and nobody has said that the lamp went off. Without a name it cannot be looked for once the shop has closed. */
export const isLeftOn = (outlook: Outlook, now: Instant): boolean =>
  isOver(outlook) && (outlook.heat.lamp === 'on' || outlook.cure.partLit) && !isFireWatch(outlook.cure.card) && (outlook.cure.lamp !== null || heatAt(outlook, now).lamp === 'on');

/** Cures that wait for something, and those that are over with their lamp left on. */
export function litOutlooks(book: Book, shop: Shop, jobs: readonly JobNo[], now: Instant): Outlook[] {
  return jobs.flatMap((no) => {
    const job = book.job(no);
    return job === null ? [] : outlooksOf(job, shop, book.air).filter((outlook) => !isOver(outlook) || isLeftOn(outlook, now));
  });
}
