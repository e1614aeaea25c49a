import type { Instant } from '../cure/units.js';
import type { JobNo, JointNo, PersonId } from '../repair/ids.js';
import type { ReminderKind } from '../repair/reminder.js';
import type { Answer } from '../reply/answer.js';

declare const id: unique symbol;
/** Identity of an incoming message, unique across chats: the same id twice is the same message (rule R18). */
export type MessageId = string & { readonly [id]: 'message' };
export const messageId = (text: string): MessageId => text as MessageId;

/** Who is speaking: the person as shop.yaml knows them, or by the name of the platform's profile. */
export interface Speaker {
  readonly id: PersonId;
  readonly name: string;
}

/** Where the answer to a message goes. The page answers in its own HTTP response. */
export type ReturnPath =
  | { readonly chat: 'page' }
  | { readonly chat: 'slack'; readonly channel: string; readonly thread: string | null; readonly user: string; readonly visible: 'to-all' | 'to-asker'; /** As below. */ readonly from?: 'form' }
  /** From a place where nothing can be answered: into the person's direct messages. A form shows a refusal itself, so only what was stored is answered there. */
  | { readonly chat: 'slack-direct'; readonly user: string; readonly from: 'form' | 'home' };

/** One thing somebody said, by typing or by pressing a button (a button is a line that could have been typed). */
export interface Message {
  readonly id: MessageId;
  readonly from: Speaker;
  readonly text: string;
  /** The job whose thread the message stands in, if any. */
  readonly thread: JobNo | null;
  readonly returnPath: ReturnPath;
  /** True when the sender may send the very same message again: then even its refusal is kept, and given again. */
  readonly mayRepeat?: boolean;
}

export type PostKind = ReminderKind | 'bundle' | 'stranger';

export interface About {
  readonly job: JobNo | null;
  readonly joint: JointNo | null;
  readonly card: string | null;
  readonly kind: PostKind;
}

/** Something the bot said by itself. `dueAt` is the true due time, `at` the moment it was posted. */
export interface Post {
  readonly seq: number;
  readonly key: string;
  readonly at: Instant;
  readonly dueAt: Instant;
  /** A person, or the whole channel. */
  readonly to: PersonId | 'channel';
  readonly about: About;
  readonly answer: Answer;
}

/** Where a remote chat shall put something. */
export type DeliveryTarget =
  /** The job's thread in the home channel; its head message is made when the thread does not stand yet. */
  | { readonly kind: 'job-thread'; readonly job: JobNo }
  | { readonly kind: 'home-channel' }
  | { readonly kind: 'channel'; readonly channel: string; readonly thread: string | null }
  | { readonly kind: 'only-for'; readonly channel: string; readonly thread: string | null; readonly user: string }
  /** The direct messages with this person. */
  | { readonly kind: 'direct'; readonly user: string }
  /** In place of a delivery that was sent, named by its key. */
  | { readonly kind: 'edit'; readonly of: string }
  /** In place of what the head of the job's thread says. */
  | { readonly kind: 'thread-head'; readonly job: JobNo };

/** One row of the outbox: something that must leave the house exactly once. */
export interface Delivery {
  /** Unique for ever; a second delivery with the same key is the same delivery. */
  readonly key: string;
  readonly chat: 'slack';
  readonly target: DeliveryTarget;
  readonly urgent: boolean;
  /** Chat id of the person to mention, or null. */
  readonly mention: string | null;
  readonly answer: Answer;
  readonly createdAt: Instant;
}
