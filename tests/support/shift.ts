import type { MilestoneKind } from '../../src/cure/card.js';
import { instant, later, type Instant } from '../../src/cure/units.js';
import { airReadings, outlooksOf, type Book } from '../../src/repair/book.js';
import type { EntryCommand, TypedTemperature, When } from '../../src/repair/commands.js';
import { decide } from '../../src/repair/decide.js';
import type { Decision, NewFact, Situation } from '../../src/repair/decision.js';
import { remindersFor } from '../../src/repair/due.js';
import type { FactRecord } from '../../src/repair/facts.js';
import { entryNo, jobNo, personId, type JobNo } from '../../src/repair/ids.js';
import { foldJob, type Job } from '../../src/repair/job.js';
import { peopleFacts, type PeopleFacts } from '../../src/repair/people-facts.js';
import { isLeftOn } from '../../src/repair/left-on.js';
import { isOver, type Outlook } from '../../src/repair/outlook.js';
import type { Reminder } from '../../src/repair/reminder.js';
import type { Shop } from '../../src/repair/shop.js';
import { CARDS } from './card-shelf.js';
import { exampleShop } from './example-shop.js';
import { on, said } from './joint.js';
import { PROCEDURES } from './procedure-shelf.js';

/** A command without what this stand-in can fill in. */
type Short<Command extends EntryCommand = EntryCommand> = Command extends EntryCommand
  ? { readonly kind: Command['kind'] } & Partial<Omit<Command, 'kind' | 'when' | 'job' | 'joint'>> & { readonly job?: string; readonly joint?: string; readonly at?: string; readonly from?: string; readonly yes?: boolean; readonly stays?: boolean }
  : never;

interface Said extends Reminder {
  readonly saidAt: Instant;
}

/** More than any test's day has. */
const MOST_POSTS = 300;

/** What the entry kinds take besides subject and time, when a test leaves it out. */
const REST = { card: null, depth: null, setting: null, heater: 'lamp', lamp: null, since: 'stated', method: 'unstated', milestone: null, reason: 'judged', humidity: null, entry: null };

export const warm = (value: number, unit: TypedTemperature['unit'] = null): TypedTemperature => ({ value, unit });

/**
 * A shift at the desk without a desk: decisions and reminders over a list of facts, nothing stored, no words.
 * Time is what the test says; reminders ring exactly on time unless the bot is down.
 */
export class Shift {
  readonly facts: FactRecord[] = [];
  readonly posts: Said[] = [];
  readonly shop: Shop;
  #entry = 0;
  #now: Instant = instant(0);

  constructor(change: Partial<Shop> = {}) {
    this.shop = exampleShop(change);
  }

  /** Says a command at a moment; first everything that is due until then is said. */
  says(who: string, when: string, short: Short, thread: string | null = null): Decision {
    const now = on(when);
    this.until(when);
    this.#now = now;
    const decision = decide(this.command(short, now), this.situation(who, now, thread));
    if (decision.ok) this.enter(who, now, decision.facts);
    return decision;
  }

  /** The same, for tests in which it must go through. */
  enters(who: string, when: string, short: Short): Decision {
    const decision = this.says(who, when, short);
    if (!decision.ok) throw new Error(`${when} ${short.kind}: ${decision.refusal.code}`);
    return decision;
  }

  enter(who: string, now: Instant, facts: readonly NewFact[]): void {
    if (facts.length === 0) return;
    this.#entry += 1;
    this.facts.push(...facts.map((fact) => ({ by: personId(who), ...fact, entry: entryNo(this.#entry), enteredAt: now })));
  }

  /** Says what is due until then, in its order. */
  until(when: string): void {
    // As at the desk, what is overdue is planned anew by the moment of the last entry or post.
    for (let next = this.#next(this.#now); next !== null && next.ringAt <= on(when); next = this.#next(this.#now)) this.#say(next, later(next.ringAt, this.#now));
  }

  /** The bot was down until then: everything overdue is said now, once each. */
  wakesUp(when: string): void {
    for (let next = this.#next(on(when)); next !== null && next.ringAt <= on(when); next = this.#next(on(when))) this.#say(next, on(when));
  }

  #say(reminder: Reminder, at: Instant): void {
    if (this.posts.some((post) => post.key === reminder.key)) throw new Error(`said twice: ${reminder.key}`);
    if (this.posts.length >= MOST_POSTS) throw new Error(`there is no end to it: ${reminder.key}`);
    this.posts.push({ ...reminder, saidAt: at });
    this.#now = at;
    const { job, cure, kind, round, step, dueAt, to } = reminder;
    this.enter('clerk', at, [{ job, happenedAt: at, fact: { type: 'reminder-raised', cure, kind, round, step, dueAt, to } }]);
  }

  #next(now: Instant): Reminder | null {
    return this.plan(now).reduce<Reminder | null>((first, one) => (first === null || one.ringAt < first.ringAt ? one : first), null);
  }

  plan(now: Instant | null = null): Reminder[] {
    return this.jobs().flatMap((no) => this.outlooks(no).flatMap((outlook) => remindersFor(outlook, this.shop, now, this.people())));
  }

  /** `12:03 handling tomek` for every post since the beginning, of these kinds or all. */
  heard(...kinds: readonly Reminder['kind'][]): string[] {
    return this.posts.filter((post) => kinds.length === 0 || kinds.includes(post.kind)).map((post) => `${said(post.saidAt)} ${post.kind} ${post.to}`);
  }

  jobs(): JobNo[] {
    return [...new Set(this.facts.flatMap((fact) => fact.job ?? []))];
  }

  job(no: string): Job {
    return foldJob(jobNo(no), this.facts.filter((fact) => fact.job === no));
  }

  outlooks(no: string): Outlook[] {
    return outlooksOf(this.job(no), this.shop, this.air());
  }

  /** The last cure of a job. */
  outlook(no: string): Outlook {
    const last = this.outlooks(no).at(-1);
    if (last === undefined) throw new Error(`nothing on ${no}`);
    return last;
  }

  due(no: string, kind: MilestoneKind): string {
    return said(this.outlook(no).milestones.find((one) => one.kind === kind)?.check.dueAt ?? null);
  }

  air() {
    return airReadings(this.facts.filter((fact) => fact.job === null));
  }

  people(): PeopleFacts {
    const shopFacts = this.facts.filter((fact) => fact.job === null);
    const undone = new Set(shopFacts.flatMap(({ fact }) => (fact.type === 'undone' ? [fact.entry] : [])));
    return peopleFacts(shopFacts, shopFacts.filter((fact) => !undone.has(fact.entry)));
  }

  situation(who: string, now: Instant, thread: string | null = null): Situation {
    const undone = new Set(this.facts.flatMap(({ fact }) => (fact.type === 'undone' ? [fact.entry] : [])));
    const own = this.facts.filter((fact) => fact.by === who && fact.fact.type !== 'undone' && !undone.has(fact.entry) && this.facts.find((first) => first.entry === fact.entry)?.by === who);
    const entry = (no: number): FactRecord[] => this.facts.filter((fact) => fact.entry === no && !undone.has(fact.entry));
    const last = own.at(-1)?.entry;
    return {
      now,
      by: personId(who),
      shop: this.shop,
      cards: CARDS,
      procedures: PROCEDURES,
      book: this.#book(),
      thread: thread === null ? null : jobNo(thread),
      lastEntry: () => (last === undefined ? null : { entry: last, facts: entry(last) }),
      entry,
    };
  }

  #book(): Book {
    const open = this.jobs().filter((no) => this.outlooks(no).some((outlook) => !isOver(outlook) || isLeftOn(outlook, this.#now)));
    return { job: (no) => (this.facts.some((fact) => fact.job === no) ? this.job(no) : null), openJobs: () => open, air: this.air(), people: this.people() };
  }

  command({ at, from, yes = false, stays = false, ...short }: Short, now: Instant): EntryCommand {
    const latest = at === undefined ? now : on(at);
    const when: When = { earliest: from === undefined ? latest : on(from), latest, stated: at !== undefined, confirmed: yes || stays, ...(stays ? { attended: true } : {}) };
    const filled = { ...REST, job: null, joint: null, when, ...short };
    if (!isCommand(filled)) throw new Error('not a command');
    return filled;
  }
}

/** The spelled-out commands above are whole; only their brands are missing. */
const isCommand = (value: object): value is EntryCommand => 'kind' in value && 'when' in value;
