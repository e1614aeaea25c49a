import { commandHelp, COMMAND_TABLE } from '../grammar/command-table.js';
import type { Instant } from '../cure/units.js';
import { openJobsIn, outlooksOf, runningOutlooks } from '../repair/book.js';
import { isJobCommand, type Command, type EntryCommand, type QuestionCommand } from '../repair/commands.js';
import { decide } from '../repair/decide.js';
import type { Decision, NewFact, Situation } from '../repair/decision.js';
import { begunIn } from '../repair/correct-cards.js';
import { sameCure } from '../repair/cure-ref.js';
import type { EntryNo, JobNo } from '../repair/ids.js';
import type { Job } from '../repair/job.js';
import type { Outlook } from '../repair/outlook.js';
import type { Shop } from '../repair/shop.js';
import { litOutlooks } from '../repair/left-on.js';
import { isForeman } from '../repair/people.js';
import { latestStart } from '../repair/latest-start.js';
import { mayNow } from '../repair/may.js';
import { helpNow } from '../repair/help-now.js';
import { nextSteps } from '../repair/next-steps.js';
import { cureFor } from '../repair/subject.js';
import { tooColdFor } from '../repair/too-cold.js';
import { inOwnUnit } from '../repair/own-unit.js';
import { whatIsMeant } from '../repair/what-yes-means.js';
import { isFireWatch } from '../repair/watch-card.js';
import { waitingList } from '../repair/waiting.js';
import { whatIf } from '../repair/what-if.js';
import type { Answer } from '../reply/answer.js';
import { composeEntry } from '../reply/compose/entry.js';
import { composeJobEntry } from '../reply/compose/job-entry.js';
import { composeLamps } from '../reply/compose/lamps.js';
import { composeMay } from '../reply/compose/may.js';
import { composeNext, composeReleased, composeStepReading } from '../reply/compose/procedure.js';
import { withStepAfter } from '../reply/compose/step-after.js';
import { withCautionsShown, withOverrides, withStanding, withWholeJob } from '../reply/compose/standing.js';
import { composeLatestStart, composeLatestStartRefusal } from '../reply/compose/latest-start.js';
import { composeWaiting } from '../reply/compose/lists.js';
import { composeHelp, MOST_COMMANDS } from '../reply/compose/help.js';
import { composeMisread } from '../reply/compose/misread.js';
import { composeWhen } from '../reply/compose/questions.js';
import { composeRefusal } from '../reply/compose/refusal.js';
import { settingFor } from '../reply/compose/setting-for.js';
import { composeAir, composeUndone } from '../reply/compose/shop.js';
import { composeWhatIf, composeWhatIfRefusal } from '../reply/compose/what-if.js';
import { composeWhy } from '../reply/compose/why.js';
import type { Fault } from './desk.js';
import type { DeskState } from './desk-ports.js';
import { bookIn } from './loaded-book.js';
import type { Message } from './message.js';
import type { BookTransaction } from './ports.js';
import { readAtDesk } from './read-at-desk.js';
import { noticesOf, strangerNotice } from './notices.js';
import { publish } from './publish.js';
import { shopIn } from './shop-in.js';
import { settleQuestions } from './settle-questions.js';
import { rememberReply, settleReplies } from './settle-replies.js';
import { situationOf } from './situation.js';
import { CLERK, writeFacts } from './write-facts.js';

/** What came of one message. */
export interface Handled {
  readonly answer: Answer;
  /** Something was stored. */
  readonly entered: boolean;
  /** It was a command that could have stored something. */
  readonly decided: boolean;
  readonly job: JobNo | null;
  readonly fault?: Fault;
  /** What was entered, and by which command. */
  readonly done?: { readonly command: EntryCommand; readonly facts: readonly NewFact[] };
}

/** One message in one transaction: seen before, understood, decided, stored with everything that follows from it, answered. */
export function handleMessage(tx: BookTransaction, desk: DeskState, message: Message, now: Instant): Handled {
  const seen = tx.seen(message.id);
  if (seen !== null) return { answer: seen.answer, entered: false, decided: false, job: null };
  const known = withPeople(tx, desk, message);
  const handled = answered(tx, known, message, now);
  if (handled.entered || (handled.decided && message.mayRepeat === true)) tx.markSeen(message.id, now, { replyId: message.id, answer: handled.answer });
  if (handled.done !== undefined) settleReplies(tx, known, { ...handled.done, line: message.text, by: message.from.id, now });
  const deliveries = desk.addressing.reply(message, handled.answer, handled.job, handled.entered, now);
  rememberReply(tx, message, handled.job, deliveries);
  if (message.returnPath.chat === 'page' && handled.answer.buttons.length > 0) tx.offer(message.id, handled.answer.buttons.map(({ line }) => line), now);
  tx.queue(deliveries);
  return handled;
}

function answered(tx: BookTransaction, desk: DeskState, message: Message, now: Instant): Handled {
  const read = readAtDesk(tx, desk, message.text, now);
  if (!read.ok) return { answer: composeMisread(read.misread, message.text, settingFor(message.from.id, { shop: desk.shop, now })), entered: false, decided: false, job: null, fault: 'misread' };
  const situation = situationOf(tx, desk, message, now);
  const command = inOwnUnit(read.command, situation);
  const handled = isQuestion(command) ? asked(command, situation) : meant(tx, desk, command, situation);
  const about = handled.job ?? jobIn(read.command, situation);
  const job = about === null ? null : bookIn(tx, desk.shelf).job(about);
  return job === null ? handled : { ...handled, answer: withWholeJob(handled.answer, job, settingFor(situation.by, situation)) };
}

/** What is to be entered, or which of the open questions a bare yes answers. */
function meant(tx: BookTransaction, desk: DeskState, command: EntryCommand, situation: Situation): Handled {
  const found = whatIsMeant(command, situation);
  if (found.ok) return entered(tx, desk, found.command, situation);
  return { answer: composeRefusal(found.refusal, settingFor(situation.by, situation)), entered: false, decided: true, job: null, fault: found.refusal.code };
}

/** The job that a line is about, also where it was refused; a list is about none. */
function jobIn(command: Command, { thread }: Situation): JobNo | null {
  if ('job' in command) return command.job ?? thread;
  return command.kind === 'move' ? command.to : null;
}

const QUESTIONS: Readonly<Record<QuestionCommand['kind'], true>> = { 'who-waits': true, lamps: true, next: true, may: true, when: true, why: true, 'what-if': true, 'latest-start': true, help: true };
const isQuestion = (command: Command): command is QuestionCommand => command.kind in QUESTIONS;

function asked(command: QuestionCommand, situation: Situation): Handled {
  const { shop, now, book } = situation;
  const setting = settingFor(situation.by, situation);
  const reply = (answer: Answer, job: JobNo | null = null): Handled => ({ answer, entered: false, decided: false, job });
  if (command.kind === 'help') {
    const now = helpNow(situation, COMMAND_TABLE.map(({ kind }) => kind), MOST_COMMANDS);
    return reply(composeHelp(commandHelp(now.job, exampleCards(situation.cards)), now, setting));
  }
  if (command.kind === 'who-waits') return reply(composeWaiting(waitingList(runningOutlooks(book, shop, book.openJobs()), now), setting, isForeman(shop, situation.by) ? book.people.strangers : [], openJobsIn(book)));
  if (command.kind === 'lamps') return reply(composeLamps(litOutlooks(book, shop, book.openJobs(), now), setting));
  if (command.kind === 'next') return nextAnswered(command, situation, reply);
  if (command.kind === 'may') {
    const about = command.job ?? situation.thread;
    return reply(withOverrides(composeMay(mayNow(command, situation), setting), about === null ? null : book.job(about), setting), about);
  }
  if (command.kind === 'what-if') {
    const supposed = whatIf(command, situation);
    return supposed.ok ? reply(withStanding(composeWhatIf(supposed.whatIf, setting), book.job(supposed.whatIf.standing.cure.job), setting), supposed.whatIf.standing.cure.job) : reply(composeWhatIfRefusal(supposed.refusal, setting));
  }
  if (command.kind === 'latest-start') {
    const planned = latestStart(command, situation);
    return planned.ok ? reply(composeLatestStart(planned.plan, setting), planned.plan.planned.job) : reply(composeLatestStartRefusal(planned.refusal, setting));
  }
  const found = cureFor(command, situation);
  if (!found.ok) return reply(composeRefusal(found.refusal, setting));
  const answer = command.kind === 'when' ? composeWhen(found.outlook, setting, besides(found.outlook, shop, book)) : composeWhy(found.outlook, setting);
  return reply(withStanding(answer, book.job(found.outlook.cure.job), setting), found.outlook.cure.job);
}

/** The other cures of the same job that still stand in its book. */
const besides = ({ cure }: Outlook, shop: Shop, book: Situation['book']): Outlook[] => {
  const job = book.job(cure.job);
  return job === null ? [] : outlooksOf(job, shop, book.air).filter((other) => !other.cure.scrapped && !sameCure(other.cure.ref, cure.ref) && !isFireWatch(other.cure.card));
};

/** An adhesive first: its lines are the ones that help shows with a card. */
const exampleCards = (cards: Situation['cards']): string[] =>
  [...cards.filter((card) => card.basis === 'panel-temperature' && card.openTime !== null), ...cards].map(({ name }) => name);

type ReplyWith = (answer: Answer, job?: JobNo | null) => Handled;

function nextAnswered(command: Extract<QuestionCommand, { readonly kind: 'next' }>, situation: Situation, reply: ReplyWith): Handled {
  const next = nextSteps(command, situation);
  return next.ok ? reply(composeNext(next.next, settingFor(situation.by, situation)), next.next.job) : reply(composeRefusal(next.refusal, settingFor(situation.by, situation)));
}

function entered(tx: BookTransaction, desk: DeskState, command: EntryCommand, situation: Situation): Handled {
  const { shop, now, by } = situation;
  const decision = decide(command, situation);
  if (!decision.ok) {
    if (decision.refusal.code === 'stranger') offerAdoption(tx, desk, situation);
    return { answer: composeRefusal(decision.refusal, settingFor(by, situation)), entered: false, decided: true, job: null, fault: decision.refusal.code };
  }
  const before = runningOutlooks(situation.book, shop, touched(command, decision, situation));
  const entry = decision.facts.length === 0 ? null : writeFacts(tx, desk, decision.facts, by, now);
  const answer = withCautionsShown(composed(tx, desk, { command, decision, situation, before, entry }), decision.facts, settingFor(by, situation));
  if (entry !== null) settleQuestions(tx, desk, { facts: decision.facts, by, now });
  if (entry !== null) for (const notice of noticesOf(entry, decision.facts, before, situation)) publish(tx, desk, notice);
  return { answer, entered: entry !== null, decided: true, job: decision.about?.job ?? decision.facts[0]?.job ?? null, ...(entry === null ? {} : { done: { command, facts: decision.facts } }) };
}

const touched = (command: EntryCommand, decision: Extract<Decision, { ok: true }>, { book }: Situation): readonly JobNo[] =>
  command.kind === 'air' || command.kind === 'undo' ? book.openJobs() : decision.about === null ? handedJobs(decision.facts) : [decision.about.job];

interface Stored {
  readonly command: EntryCommand;
  readonly decision: Extract<Decision, { ok: true }>;
  readonly situation: Situation;
  readonly before: readonly Outlook[];
  readonly entry: EntryNo | null;
}

function composed(tx: BookTransaction, desk: DeskState, { command, decision, situation, before, entry }: Stored): Answer {
  const { shop, by } = situation;
  const book = bookIn(tx, desk.shelf);
  const setting = settingFor(by, situation);
  const { about, notes, facts } = decision;
  if (isJobCommand(command) && (command.kind !== 'enter' || about === null)) {
    const job = jobOf(decision, book);
    const jobs = job === null ? handedJobs(facts) : [job.no];
    return composeJobEntry({ command, by, facts, notes, entry, job, outlooks: jobs.flatMap((no) => outlooksIn(no, shop, book)), air: book.air }, setting);
  }
  if (about !== null) {
    const after = outlooksIn(about.job, shop, book).find((outlook) => sameCure(outlook.cure.ref, about.cure));
    const was = before.find((outlook) => sameCure(outlook.cure.ref, about.cure)) ?? null;
    if (after !== undefined) {
      const said = composeEntry({ command, by, before: was, after, notes, entry }, setting);
      const job = book.job(about.job);
      return job === null ? said : withStepAfter(said, { job, outlooks: outlooksIn(job.no, shop, book), air: book.air, entry }, setting);
    }
  }
  const [first] = facts;
  if (first?.fact.type === 'job-released') {
    const job = jobOf(decision, book);
    if (job !== null) return composeReleased(job, setting);
  }
  if (first?.fact.type === 'reading' && about === null) {
    const job = jobOf(decision, book);
    const read = job === null ? null : composeStepReading({ by, facts, notes, entry, job, outlooks: outlooksIn(job.no, shop, book), air: book.air }, setting);
    if (read !== null) return read;
  }
  if (first?.fact.type === 'air' && entry !== null) {
    const after = runningOutlooks(book, shop, book.openJobs());
    return composeAir({ value: first.fact.value, typed: first.fact.typed, humidity: first.fact.humidity, at: first.happenedAt, entry, changed: pairs(before, after, book), tooCold: tooColdFor(situation.cards, first.fact.value) }, setting);
  }
  const what = notes.flatMap((note) => (note.note === 'undone' ? [note.what] : []))[0] ?? null;
  const after = runningOutlooks(book, shop, book.openJobs());
  return composeUndone(what, pairs(before, after, book), setting);
}

/** The jobs that an entry about the people is about. */
const handedJobs = (facts: readonly NewFact[]): JobNo[] => [...new Set(facts.flatMap(({ job, fact }) => (fact.type === 'handover-offered' ? fact.jobs : (job ?? []))))];

/** The foreman is asked once whether somebody who wants to enter something belongs to the shop. */
function offerAdoption(tx: BookTransaction, desk: DeskState, situation: Situation): void {
  const { by, now, book } = situation;
  if (book.people.askedAbout.includes(by)) return;
  const entry = writeFacts(tx, desk, [{ job: null, happenedAt: now, fact: { type: 'adoption-asked', person: by } }], CLERK, now);
  publish(tx, desk, strangerNotice(entry, situation));
}

/** The job that a decision is about: the one it names, or the one of its facts. */
function jobOf({ about, facts }: Extract<Decision, { ok: true }>, book: ReturnType<typeof bookIn>): Job | null {
  const no = about?.job ?? facts[0]?.job ?? null;
  return no === null ? null : book.job(no);
}

/** The same cure before and after, whatever its card was called. */
const pairs = (before: readonly Outlook[], after: readonly Outlook[], book: ReturnType<typeof bookIn>): { before: Outlook; after: Outlook }[] =>
  before.flatMap((one) => {
    const all = book.job(one.cure.job)?.all ?? [];
    const begun = begunIn(one.cure.ref, all);
    return after.filter((other) => other.cure.job === one.cure.job && sameCure(begunIn(other.cure.ref, all), begun)).map((other) => ({ before: one, after: other }));
  });

function outlooksIn(no: JobNo, shop: Shop, book: ReturnType<typeof bookIn>): Outlook[] {
  const job = book.job(no);
  return job === null ? [] : outlooksOf(job, shop, book.air);
}

/** People shop.yaml does not list are known by the name they came with. */
function withPeople(tx: BookTransaction, desk: DeskState, { from }: Message): DeskState {
  const listed = desk.shop.people.some((person) => person.id === from.id);
  if (!listed && tx.guests().find((guest) => guest.id === from.id)?.name !== from.name) tx.saveGuest(from.id, from.name);
  return { ...desk, shop: shopIn(tx, desk) };
}
