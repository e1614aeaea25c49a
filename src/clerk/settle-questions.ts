import { outlooksOf } from '../repair/book.js';
import type { NewFact } from '../repair/decision.js';
import type { Fact } from '../repair/facts.js';
import { entryNo, type JobNo, type PersonId } from '../repair/ids.js';
import type { Outlook } from '../repair/outlook.js';
import { stillAsked } from '../repair/still-asked.js';
import type { Instant } from '../cure/units.js';
import { composeAnswered, type Ending, type QuestionEnd } from '../reply/compose/answered.js';
import { settingFor } from '../reply/compose/setting-for.js';
import type { DeskState } from './desk-ports.js';
import { bookIn } from './loaded-book.js';
import type { Post } from './message.js';
import type { BookTransaction } from './ports.js';
import { shopIn } from './shop-in.js';

/** What somebody has just entered. */
export interface Entered {
  readonly facts: readonly NewFact[];
  readonly by: PersonId;
  readonly now: Instant;
}

/** What was asked and is not any more, by a press or a typed line alike: the post is edited, in the caller's transaction. */
export function settleQuestions(tx: BookTransaction, desk: DeskState, { facts, by, now }: Entered): void {
  const shop = shopIn(tx, desk);
  const jobs = facts.some(({ job }) => job === null) ? [null, ...tx.openJobs()] : [];
  for (const job of new Set<JobNo | null>([...jobs, ...facts.map((fact) => fact.job)])) {
    for (const post of tx.asked(job)) {
      const end = job === null ? endOfPeople(tx, desk, post, facts) : endOf(tx, desk, job, post, facts);
      if (end === null) continue;
      tx.settled(post.seq);
      const ending: Ending = { end, by, said: end === 'done' ? saidIn(facts, post) : null };
      tx.queue(desk.addressing.answered(post, composeAnswered(post.answer, ending, settingFor(post.to, { shop, now })), now));
    }
  }
}

function endOf(tx: BookTransaction, desk: DeskState, no: JobNo, post: Post, facts: readonly NewFact[]): QuestionEnd | null {
  const book = bookIn(tx, desk.shelf);
  const job = book.job(no);
  const shop = shopIn(tx, desk);
  const outlooks: Outlook[] = job === null ? [] : outlooksOf(job, shop, book.air);
  if (outlooks.some((outlook) => stillAsked(post.key, outlook, shop, book.people))) return null;
  return facts.some(({ job: about, fact }) => about === no && answers(fact, post)) ? 'done' : 'overtaken';
}

/** Whether a fact is of the kind that a post asked for. */
function answers(fact: Fact, { about: { kind, joint } }: Post): boolean {
  switch (fact.type) {
    case 'checked':
      return fact.cure.joint === joint;
    case 'closed':
    case 'moved':
      return fact.cure.joint === joint && (kind === 'open-limit' || kind === 'fire-watch' || kind === 'safety');
    case 'released':
    case 'scrapped':
      return fact.cure.joint === joint && (kind === 'decision' || kind === 'open-limit' || kind === 'safety');
    case 'reading':
    case 'lamp-set':
    case 'lamp-on':
    case 'lamp-off':
    case 'lamp-found-off':
      return fact.joint === joint && (kind === 'reading' || kind === 'still-on' || kind === 'stage' || kind === 'safety');
    default:
      return false;
  }
}

const NOTICE = /^notice\/(\d+)\//;

/** A stranger about whom the foreman was asked, or a handover that somebody was to accept. */
function endOfPeople(tx: BookTransaction, desk: DeskState, post: Post, facts: readonly NewFact[]): QuestionEnd | null {
  const about = NOTICE.exec(post.key)?.[1];
  if (about === undefined) return null;
  const entry = entryNo(Number(about));
  if (post.about.kind === 'stranger') {
    const stranger = tx.factsOfEntry(entry).flatMap(({ fact }) => (fact.type === 'adoption-asked' ? [fact.person] : []))[0];
    return facts.some(({ fact }) => fact.type !== 'adoption-asked' && 'person' in fact && fact.person === stranger) ? 'done' : null;
  }
  const offer = bookIn(tx, desk.shelf).people.offers.find((one) => one.entry === entry);
  if (offer === undefined) return 'overtaken';
  return offer.accepted === null ? null : 'done';
}

function saidIn(facts: readonly NewFact[], { about }: Post): Ending['said'] {
  return facts.flatMap(({ fact }) => (fact.type === 'checked' && fact.cure.joint === about.joint ? [fact.result] : []))[0] ?? null;
}
