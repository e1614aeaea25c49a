import { minutesBetween, type Instant } from '../cure/units.js';
import { outlooksOf, runningOutlooks } from '../repair/book.js';
import type { NewFact } from '../repair/decision.js';
import { remindersFor } from '../repair/due.js';
import { sameCure } from '../repair/cure-ref.js';
import type { Outlook } from '../repair/outlook.js';
import type { Reminder } from '../repair/reminder.js';
import { lastBell, nextOpening, type BellTime } from '../repair/shop-hours.js';
import { waitingList } from '../repair/waiting.js';
import { composeBundle } from '../reply/compose/lists.js';
import { composePost, type Lateness } from '../reply/compose/post.js';
import type { DeskState } from './desk-ports.js';
import { bookIn } from './loaded-book.js';
import { publish } from './publish.js';
import { shopIn } from './shop-in.js';
import type { BookTransaction } from './ports.js';
import { CLERK, replan, writeFacts } from './write-facts.js';

/** Later than this is worth a word. */
const IN_TIME_MINUTES = 1.5;
const ALL = 100_000;

/** Posts one reminder, or drops it when the facts no longer ask for it. */
export function fireReminder(tx: BookTransaction, desk: DeskState, reminder: Reminder, now: Instant): void {
  const outlook = outlookOf(tx, desk, reminder);
  const wanted = outlook === null ? undefined : remindersFor(outlook, shopIn(tx, desk), now, bookIn(tx, desk.shelf).people).find((one) => one.key === reminder.key);
  // What came due while nobody was at the desk and the shop is closed now waits for the opening as well.
  if (outlook === null || wanted === undefined || wanted.ringAt > now) {
    replan(tx, desk, reminder.job, now);
    return;
  }
  writeFacts(tx, desk, [raised(reminder, now)], CLERK, now);
  // The warning before a limit that has passed meanwhile says nothing the limit's own message does not say.
  if (reminder.kind === 'open-limit' && reminder.step === 0 && now >= reminder.dueAt) return;
  const shop = shopIn(tx, desk);
  const answer = composePost(reminder, outlook, latenessOf(reminder, outlook, desk, now), { shop, now });
  const { joint, card } = reminder.cure;
  publish(tx, desk, { key: reminder.key, at: now, dueAt: reminder.dueAt, to: reminder.to, about: { job: reminder.job, joint, card, kind: reminder.kind }, answer });
}

function outlookOf(tx: BookTransaction, desk: DeskState, reminder: Reminder): Outlook | null {
  const book = bookIn(tx, desk.shelf);
  const job = book.job(reminder.job);
  return job === null ? null : (outlooksOf(job, desk.shop, book.air).find((outlook) => sameCure(outlook.cure.ref, reminder.cure)) ?? null);
}

const raised = ({ job, cure, kind, round, step, dueAt, to }: Reminder, now: Instant): NewFact => ({ job, happenedAt: now, fact: { type: 'reminder-raised', cure, kind, round, step, dueAt, to } });

/** Honest about being late (rule R13): down, entered after the time had come, or simply late. */
function latenessOf(reminder: Reminder, outlook: Outlook, { clock }: DeskState, now: Instant): Lateness {
  if (minutesBetween(reminder.ringAt, now) <= IN_TIME_MINUTES) return 'in time';
  if (outlook.cure.touchedAt > reminder.ringAt) return 'entered late';
  return reminder.ringAt < clock.startedAt ? 'was down' : 'late';
}

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
  const bundle = composeBundle(bell, list, nextOpening(shop, now), { shop, now });
  const bellFact: NewFact = { job: null, happenedAt: now, fact: { type: 'bell', bell: bell.bell, dueAt: bell.at, posted: bundle !== null } };
  writeFacts(tx, desk, [bellFact], CLERK, now);
  if (bundle === null) return;
  // What does not fit into the bundle is said on its own, right after it.
  const said = waited.filter((reminder) => bundle.named.some(({ outlook: { cure } }) => cure.job === reminder.job && sameCure(cure.ref, reminder.cure)));
  if (said.length > 0) writeFacts(tx, desk, said.map((reminder) => raised(reminder, now)), CLERK, now);
  publish(tx, desk, { key: `bundle/${bell.bell}/${new Date(bell.at).toISOString()}`, at: now, dueAt: bell.at, to: 'channel', about: { job: null, joint: null, card: null, kind: 'bundle' }, answer: bundle.answer });
}

