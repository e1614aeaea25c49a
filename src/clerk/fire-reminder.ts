import { minus, minutesBetween, type Instant } from '../cure/units.js';
import { outlooksOf } from '../repair/book.js';
import { CROWDED_OVER, isUrgent, turnOf } from '../repair/crowding.js';
import type { NewFact } from '../repair/decision.js';
import { remindersFor } from '../repair/due.js';
import type { JobNo, PersonId } from '../repair/ids.js';
import { isDueWhileHeld } from '../repair/job-hold.js';
import { oneQuestion, type Ringing } from '../repair/one-question.js';
import type { Reminder } from '../repair/reminder.js';
import { composePost, type Lateness } from '../reply/compose/post.js';
import { withWholeJob } from '../reply/compose/standing.js';
import { settingFor } from '../reply/compose/setting-for.js';
import { composeTogether } from '../reply/compose/together.js';
import type { DeskState } from './desk-ports.js';
import { bookIn } from './loaded-book.js';
import type { BookTransaction } from './ports.js';
import { publish } from './publish.js';
import { shopIn } from './shop-in.js';
import { CLERK, replan, writeFacts } from './write-facts.js';

/** Later than this is worth a word. */
const IN_TIME_MINUTES = 1.5;

/** Posts what one reminder asks for, or drops it when the facts no longer ask for it. Many at once to one person go out as one. */
export function fireReminder(tx: BookTransaction, desk: DeskState, stored: Reminder, now: Instant): void {
  const first = plannedIn(tx, desk, stored.job, now).find(({ reminder }) => reminder.key === stored.key);
  // What came due while nobody was at the desk and the shop is closed now waits for the opening as well.
  if (first === undefined || first.reminder.ringAt > now) {
    replan(tx, desk, stored.job, now);
    return;
  }
  const { to, kind } = first.reminder;
  if (to === 'channel' || isUrgent(kind)) {
    say(tx, desk, asked(tx, desk, first, now), now);
    return;
  }
  const waiting = waitingFor(tx, desk, to, first, now);
  const said = tx.postsTo(to, minus(now, CROWDED_OVER)).filter((post) => !isUrgent(post.kind)).length;
  const turn = turnOf(said, waiting.map((question) => question[0].reminder.ringAt), now);
  if (turn.how === 'alone') say(tx, desk, asked(tx, desk, first, now), now);
  else if (turn.how === 'together') sayTogether(tx, desk, waiting, to, now);
  else putBack(tx, first.reminder, turn.at);
}

type Question = readonly [Ringing, ...Ringing[]];

/** What stands to be said about a job, by its facts. */
function plannedIn(tx: BookTransaction, desk: DeskState, no: JobNo, now: Instant): Ringing[] {
  const book = bookIn(tx, desk.shelf);
  const shop = shopIn(tx, desk);
  const job = book.job(no);
  const outlooks = job === null ? [] : outlooksOf(job, shop, book.air);
  return outlooks.flatMap((outlook) => remindersFor(outlook, shop, now, book.people).map((reminder) => ({ reminder, outlook })));
}

const everyJob = (tx: BookTransaction, first: Ringing): JobNo[] => [...new Set([first.reminder.job, ...tx.openJobs()])];

/** One matter with all that is asked in the same breath. */
function asked(tx: BookTransaction, desk: DeskState, first: Ringing, now: Instant): Question {
  const { kind } = first.reminder;
  const jobs = kind === 'handover' || kind === 'still-on' ? everyJob(tx, first) : [];
  const [, ...along] = oneQuestion(first, jobs.flatMap((job) => plannedIn(tx, desk, job, now)), shopIn(tx, desk), now);
  return [first, ...along];
}

/** All that should have been said to this person by now and was not, question by question, the longest due first. */
function waitingFor(tx: BookTransaction, desk: DeskState, to: PersonId, first: Ringing, now: Instant): Question[] {
  const shop = shopIn(tx, desk);
  const jobs = everyJob(tx, first).filter((job) => tx.remindersOf(job).some((reminder) => reminder.to === to && !isUrgent(reminder.kind)));
  const planned = jobs.flatMap((job) => plannedIn(tx, desk, job, now));
  const due = planned.filter(({ reminder }) => reminder.to === to && reminder.ringAt <= now && !isUrgent(reminder.kind)).sort((one, other) => one.reminder.ringAt - other.reminder.ringAt);
  const questions: Question[] = [];
  for (const one of due) {
    if (questions.flat().some(({ reminder }) => reminder.key === one.reminder.key)) continue;
    const [, ...along] = oneQuestion(one, planned, shop, now);
    questions.push([one, ...along]);
  }
  return questions;
}

/** One question, about one cure or several: said, and noted as said about each of them. */
function say(tx: BookTransaction, desk: DeskState, question: Question, now: Instant): void {
  const [{ reminder, outlook }] = question;
  writeFacts(tx, desk, question.map((one) => raised(one.reminder, now)), CLERK, now);
  // The warning before a limit that has passed meanwhile says nothing the limit's own message does not say.
  if (reminder.kind === 'open-limit' && reminder.step === 0 && now >= reminder.dueAt) return;
  const shop = shopIn(tx, desk);
  const setting = settingFor(reminder.to, { shop, now });
  const post = composePost(reminder, outlook, latenessOf(reminder, outlook, desk, now), setting, question.map((one) => one.outlook));
  const job = bookIn(tx, desk.shelf).job(reminder.job);
  const answer = job === null || reminder.kind === 'handover' ? post : withWholeJob(post, job, setting);
  const { joint, card } = reminder.cure;
  const about = reminder.kind === 'handover' ? { job: null, joint: null, card: null } : { job: reminder.job, joint, card };
  publish(tx, desk, { key: reminder.key, at: now, dueAt: reminder.dueAt, to: reminder.to, about: { ...about, kind: reminder.kind }, answer });
}

/** More than one person can follow in an hour: one message that names each matter. What does not fit in comes in the next one. */
function sayTogether(tx: BookTransaction, desk: DeskState, waiting: readonly Question[], to: PersonId, now: Instant): void {
  const shop = shopIn(tx, desk);
  const setting = settingFor(to, { shop, now });
  const book = bookIn(tx, desk.shelf);
  const posts = waiting.map((question) => {
    const [{ reminder, outlook }] = question;
    return { question, said: composePost(reminder, outlook, 'in time', setting, question.map((one) => one.outlook)), outlook, job: book.job(reminder.job) };
  });
  const { answer, named } = composeTogether(posts, setting);
  const [first] = named.flatMap(({ question }) => question);
  if (first === undefined) return;
  writeFacts(tx, desk, named.flatMap(({ question }) => question.map((one) => raised(one.reminder, now))), CLERK, now);
  publish(tx, desk, { key: `together/${first.reminder.key}`, at: now, dueAt: first.reminder.dueAt, to, about: { job: null, joint: null, card: null, kind: 'bundle' }, answer });
}

/** It stays to be said, a little later. Whatever is planned anew meanwhile comes back here. */
const putBack = (tx: BookTransaction, { job, key }: Reminder, ringAt: Instant): void => {
  tx.replan(job, tx.remindersOf(job).map((one) => (one.key === key ? { ...one, ringAt } : one)));
};

/** That something was said. */
export const raised = ({ job, cure, kind, round, step, dueAt, to }: Reminder, now: Instant): NewFact => ({ job, happenedAt: now, fact: { type: 'reminder-raised', cure, kind, round, step, dueAt, to } });

/** Honest about being late (rule R13): down, entered after the time had come, or simply late. */
function latenessOf(reminder: Reminder, outlook: Ringing['outlook'], { clock }: DeskState, now: Instant): Lateness {
  if (isFirstAfterHold(reminder, outlook)) return 'was held';
  // A repeat is no news that could be late: what it repeats was said. Harm and limits tell a gap in their repeats.
  if ((reminder.step > 0 && !isUrgent(reminder.kind)) || minutesBetween(reminder.ringAt, now) <= IN_TIME_MINUTES) return 'in time';
  if (isReleasedLater(reminder, outlook)) return 'was held';
  if (outlook.cure.touchedAt > reminder.ringAt) return 'entered late';
  return reminder.ringAt < clock.startedAt ? 'was down' : 'late';
}

/** The foreman's decision about this cure came after its time. */
const isReleasedLater = ({ kind, ringAt }: Reminder, { cure }: Ringing['outlook']): boolean => !isUrgent(kind) && !HEARD_WHILE_HELD.includes(kind) && cure.releasedAt !== null && cure.releasedAt > ringAt;

const HEARD_WHILE_HELD: readonly Reminder['kind'][] = ['reading', 'still-on', 'decision', 'handover'];

/** It came due while the whole job stood still, and is said now for the first time. */
const isFirstAfterHold = ({ kind, round, dueAt }: Reminder, { cure }: Ringing['outlook']): boolean =>
  !isUrgent(kind) && !HEARD_WHILE_HELD.includes(kind) && isDueWhileHeld(cure.jobHolds, dueAt) && !cure.raised.some((one) => one.kind === kind && one.round === round && one.at >= dueAt);
