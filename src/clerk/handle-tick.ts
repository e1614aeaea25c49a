import type { Instant } from '../cure/units.js';
import { openJobsIn, runningOutlooks } from '../repair/book.js';
import type { NewFact } from '../repair/decision.js';
import { sameCure } from '../repair/cure-ref.js';
import { lastBell, nextOpening, type BellTime } from '../repair/shop-hours.js';
import { waitingList } from '../repair/waiting.js';
import { composeBundle } from '../reply/compose/lists.js';
import { settingFor } from '../reply/compose/setting-for.js';
import type { DeskState } from './desk-ports.js';
import { raised } from './fire-reminder.js';
import { bookIn } from './loaded-book.js';
import { publish } from './publish.js';
import { shopIn } from './shop-in.js';
import type { BookTransaction } from './ports.js';
import { CLERK, writeFacts } from './write-facts.js';

const ALL = 100_000;

/** The bell that has come and was not rung yet, or null. The first start only notes where the day stands. */
export function pendingBell(tx: BookTransaction, desk: DeskState, now: Instant): BellTime | null {
  const bell = lastBell(desk.shop, now);
  if (bell === null) return null;
  const rung = desk.shelf.shopFacts(tx).flatMap(({ fact }) => (fact.type === 'bell' ? [fact.dueAt] : [])).at(-1);
  if (rung !== undefined) return bell.at > rung ? bell : null;
  writeFacts(tx, desk, [{ job: null, happenedAt: now, fact: { type: 'bell', bell: bell.bell, dueAt: bell.at, posted: false } }], CLERK, now);
  return null;
}

/** Opening or closing time: one bundle to the channel; what waited for opening time is raised by it. */
export function ringBell(tx: BookTransaction, desk: DeskState, bell: BellTime, now: Instant): void {
  const waited = tx.ringing(now, ALL).filter((reminder) => reminder.route === 'bundle');
  const shop = shopIn(tx, desk);
  const book = bookIn(tx, desk.shelf);
  const list = waitingList(runningOutlooks(book, shop, book.openJobs()), now);
  const bundle = composeBundle(bell, list, nextOpening(shop, now), settingFor('channel', { shop, now }), book.people.strangers, openJobsIn(book));
  const bellFact: NewFact = { job: null, happenedAt: now, fact: { type: 'bell', bell: bell.bell, dueAt: bell.at, posted: bundle !== null } };
  writeFacts(tx, desk, [bellFact], CLERK, now);
  if (bundle === null) return;
  // What does not fit into the bundle is said on its own, right after it.
  const said = waited.filter((reminder) => bundle.named.some(({ outlook: { cure } }) => cure.job === reminder.job && sameCure(cure.ref, reminder.cure)));
  if (said.length > 0) writeFacts(tx, desk, said.map((reminder) => raised(reminder, now)), CLERK, now);
  publish(tx, desk, { key: `bundle/${bell.bell}/${new Date(bell.at).toISOString()}`, at: now, dueAt: bell.at, to: 'channel', about: { job: null, joint: null, card: null, kind: 'bundle' }, answer: bundle.answer });
}

