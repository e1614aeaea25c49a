import type { Instant } from '../cure/units.js';
import type { Fact, FactRecord } from '../repair/facts.js';
import type { EntryNo, JobNo, PersonId } from '../repair/ids.js';
import type { Reminder } from '../repair/reminder.js';
import type { Answer } from '../reply/answer.js';
import type { About, Delivery, MessageId, Post } from './message.js';

/** Time as a port: the real clock or a practice clock. */
export interface Clock {
  now(): Instant;
  /** Calls `ring` once when `at` has come (never before); a new call replaces the old one; null disarms. */
  arm(at: Instant | null, ring: () => void): void;
  /** When this process began, on this clock. What was due before was missed while nobody was at the desk. */
  readonly startedAt: Instant;
  close(): void;
}

/** A post as the clerk writes it; the store numbers it. */
export type NewPost = Omit<Post, 'seq'>;

/** What was answered to a message that was already seen. */
export interface SeenAnswer {
  readonly replyId: string;
  readonly answer: Answer;
}

/** One transaction: everything in it is stored together or not at all. */
export interface BookTransaction {
  seen(id: MessageId): SeenAnswer | null;
  markSeen(id: MessageId, at: Instant, answer: SeenAnswer): void;
  nextEntry(): EntryNo;
  append(facts: readonly FactRecord[]): void;
  /** All facts of a job, undone ones included, in the order they were entered. */
  factsOf(job: JobNo): FactRecord[];
  /** Facts that belong to no job (shop air, bells), newest `limit`, in the order they were entered. */
  shopFacts(limit: number): FactRecord[];
  /** The last entry of this person that is not undone and not an undo itself, with all its facts. */
  lastEntryOf(by: PersonId): { readonly entry: EntryNo; readonly facts: readonly FactRecord[] } | null;
  factsOfEntry(entry: EntryNo): FactRecord[];
  openJobs(): JobNo[];
  /** A job is open while any of its cures waits for something. */
  setOpen(job: JobNo, open: boolean): void;
  /** Makes the stored reminders of a job equal to `reminders`: adds, changes and removes by key. */
  replan(job: JobNo, reminders: readonly Reminder[]): void;
  /** Reminders whose ring time has come, earliest first (then by key). */
  ringing(at: Instant, limit: number): Reminder[];
  nextRing(): Instant | null;
  remindersOf(job: JobNo): Reminder[];
  post(post: NewPost): Post;
  queue(deliveries: readonly Delivery[]): void;
}

export interface BookStore {
  /** Runs `work` in one immediate transaction; a throw rolls everything back. */
  transact<T>(work: (book: BookTransaction) => T): T;
  /** Posts after `seq`, in order. */
  postsAfter(seq: number, limit: number): Post[];
  /** The latest instant the book knows of (entry, post or saved clock), so that a practice clock never runs behind it. */
  latestInstant(): Instant | null;
  saveClock(at: Instant): void;
  close(): void;
}

/** Which remote chats a post or a reply goes to; the local page reads the posts themselves. */
export interface Addressing {
  post(post: Post, about: About): readonly Delivery[];
  record(job: JobNo, answer: Answer, key: string): readonly Delivery[];
}

export type { Fact, FactRecord };
