import type { Instant } from '../cure/units.js';
import type { Fact, FactRecord } from '../repair/facts.js';
import type { EntryNo, JobNo, PersonId } from '../repair/ids.js';
import type { Reminder } from '../repair/reminder.js';
import type { Answer } from '../reply/answer.js';
import type { About, Delivery, Message, MessageId, Post, PostKind } from './message.js';

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

/** An answer that offered something and stands where it can be edited. */
export interface AskedReply {
  /** Key of its delivery. */
  readonly key: string;
  readonly job: JobNo | null;
  /** Whose words it is in. */
  readonly reader: PersonId;
  readonly at: Instant;
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
  /** Who was taken on or turned away, and about whom the foreman was asked: facts that still count, however old, in the order they were entered. */
  adoptions(): FactRecord[];
  /** The last entry that this person made, not undone and not an undo itself, with all its facts; what somebody else told anew of theirs is the other's entry. */
  lastEntryOf(by: PersonId): { readonly entry: EntryNo; readonly facts: readonly FactRecord[] } | null;
  factsOfEntry(entry: EntryNo): FactRecord[];
  /** The newest `limit` things this person did or measured, newest first; without what was taken back. */
  factsBy(by: PersonId, limit: number): FactRecord[];
  /** People shop.yaml does not list, by the name they came with. */
  guests(): { readonly id: PersonId; readonly name: string }[];
  saveGuest(id: PersonId, name: string): void;
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
  /** A post asks something about this job, or about the people (null), until it is settled. */
  ask(post: Post): void;
  /** What was asked about this job, or about the people, and is not settled, oldest first. */
  asked(job: JobNo | null): Post[];
  settled(seq: number): void;
  /** An answer with buttons under it, until one of them was done; those older than a fortnight are forgotten. */
  askInReply(reply: AskedReply): void;
  /** The newest `limit` of those about this job, or about none, oldest first. */
  askedInReplies(job: JobNo | null, limit: number): AskedReply[];
  replySettled(key: string): void;
  /** What was offered under an answer that is shown where it was asked for; forgotten after a fortnight. */
  offer(reply: MessageId, lines: readonly string[], at: Instant): void;
  /** The lines of the buttons under an answer to a message, or under a post, by its id; null: there is no such answer. */
  offeredUnder(reply: string): readonly string[] | null;
  /** Keeps what the sheet of a job says; the number of the change, or null when it says so already. */
  keepSheet(job: JobNo, answer: Answer): number | null;
  /** A delivery that takes the place of something takes that of an earlier one for the same place that still waits. */
  /** What was said to this person by the bot itself after that moment, in order. */
  postsTo(person: PersonId, after: Instant): { readonly at: Instant; readonly kind: PostKind }[];
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
  /** Which time its entries are in; null: nothing stands in it yet. */
  timeKept(): 'real' | 'practice' | null;
  /** Notes it once, at the first start. */
  keepTime(kind: 'real' | 'practice'): void;
  close(): void;
}

/** `sending` is between the claim and the outcome; a row found there at start has an unknown outcome. */
export type DeliveryState = 'waiting' | 'sending' | 'sent' | 'refused';

export interface OutboxRow {
  readonly delivery: Delivery;
  readonly state: DeliveryState;
  readonly attempts: number;
  readonly notBefore: Instant;
}

export interface OutboxStore {
  /** Next row of each lane that may go now: oldest first within a lane, urgent before ordinary; a lane with a row in `sending` hands out nothing else. Lane = laneOf(delivery.target): 'home' for job-thread and home-channel, else the channel id. */
  nextWaiting(now: Instant): OutboxRow[];
  /** Rows left in `sending` by a process that died: their outcome is unknown. */
  unknown(): OutboxRow[];
  /** waiting -> sending, attempts + 1, one commit. */
  claim(key: string, at: Instant): void;
  sent(key: string, at: Instant, receipt: { readonly channel: string; readonly ts: string }): void;
  refused(key: string, at: Instant, reason: string): void;
  /** Back to waiting. */
  retry(key: string, notBefore: Instant, reason: string): void;
  earliestNotBefore(): Instant | null;
  /** Where a sent delivery stands; `waiting` while it is on its way, null when it never came or never will. */
  receiptOf(key: string): { readonly channel: string; readonly ts: string } | 'waiting' | null;
  /** Thread head of a job in the home channel, once sent. */
  threadOf(job: JobNo): { readonly channel: string; readonly ts: string } | null;
  saveThread(job: JobNo, at: Instant, where: { readonly channel: string; readonly ts: string }): void;
  jobOfThread(channel: string, ts: string): JobNo | null;
  /** Incoming chat payloads, stored before they are acknowledged and removed when handled; false when already received within 24 h. */
  receive(id: string, at: Instant, payload: string): boolean;
  received(): { readonly id: string; readonly payload: string }[];
  /** Keeps the id for 24 h, drops the payload. */
  handled(id: string): void;
  /** Names of the chat platform's profiles. */
  profileName(chatId: string): string | null;
  saveProfileName(chatId: string, name: string, at: Instant): void;
  /** Who has opened their home tab since, longest ago first. */
  homesSince(at: Instant): string[];
  /** Somebody opened theirs; those not opened for a fortnight are forgotten. */
  homeOpened(chatId: string, at: Instant): void;
  /** The platform shows nothing to them any more. */
  homeGone(chatId: string): void;
}

/** Which remote chats a post or a reply goes to; the local page reads the posts themselves. */
export interface Addressing {
  post(post: Post, about: About): readonly Delivery[];
  /** The answer to a message, and the line an entry leaves in its job's thread. */
  reply(message: Message, answer: Answer, job: JobNo | null, isEntry: boolean, at: Instant): readonly Delivery[];
  /** The same post once nothing is asked any more: `answer` in place of it. */
  answered(post: Post, answer: Answer, at: Instant): readonly Delivery[];
  /** The same reply once what it offered was done: `answer` in place of it. */
  replied(reply: AskedReply, answer: Answer, at: Instant): readonly Delivery[];
  /** What the first message of a job's thread says from now on; `change` counts up. */
  sheet(job: JobNo, answer: Answer, change: number, at: Instant): readonly Delivery[];
}

export type { Fact, FactRecord };
