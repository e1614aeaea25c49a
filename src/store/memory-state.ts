import type { MessageId, Post } from '../clerk/message.js';
import type { AskedReply, OutboxRow, SeenAnswer } from '../clerk/ports.js';
import type { Instant } from '../cure/units.js';
import type { FactRecord } from '../repair/facts.js';
import type { JobNo, PersonId } from '../repair/ids.js';
import type { Reminder } from '../repair/reminder.js';

/** Everything the in-memory book knows. The values inside are never changed, only replaced. */
export interface MemoryState {
  readonly facts: FactRecord[];
  readonly openJobs: Set<JobNo>;
  readonly guests: Map<PersonId, string>;
  readonly reminders: Map<JobNo, readonly Reminder[]>;
  readonly posts: Post[];
  readonly seen: Map<MessageId, SeenAnswer & { readonly at: Instant }>;
  readonly outbox: Map<string, OutboxRow>;
  readonly receipts: Map<string, { readonly channel: string; readonly ts: string }>;
  /** Sequence numbers of posts that still ask something. */
  readonly asked: Set<number>;
  readonly askedReplies: Map<string, AskedReply>;
  readonly offers: Map<string, { readonly at: Instant; readonly lines: readonly string[] }>;
  readonly sheets: Map<JobNo, { readonly change: number; readonly answer: string }>;
  readonly threads: Map<JobNo, { readonly channel: string; readonly ts: string }>;
  readonly inbox: Map<string, { readonly at: Instant; readonly payload: string | null }>;
  readonly profiles: Map<string, string>;
  readonly homes: Map<string, Instant>;
  readonly clock: { at: Instant | null; kept: 'real' | 'practice' | null };
}

export const emptyState = (): MemoryState => ({
  facts: [],
  openJobs: new Set(),
  guests: new Map(),
  reminders: new Map(),
  posts: [],
  seen: new Map(),
  outbox: new Map(),
  receipts: new Map(),
  asked: new Set(),
  askedReplies: new Map(),
  offers: new Map(),
  sheets: new Map(),
  threads: new Map(),
  inbox: new Map(),
  profiles: new Map(),
  homes: new Map(),
  clock: { at: null, kept: null },
});

/** A copy to go back to when a transaction fails. */
export const copyOf = (state: MemoryState): MemoryState => ({
  facts: [...state.facts],
  openJobs: new Set(state.openJobs),
  guests: new Map(state.guests),
  reminders: new Map(state.reminders),
  posts: [...state.posts],
  seen: new Map(state.seen),
  outbox: new Map(state.outbox),
  receipts: new Map(state.receipts),
  asked: new Set(state.asked),
  askedReplies: new Map(state.askedReplies),
  offers: new Map(state.offers),
  sheets: new Map(state.sheets),
  threads: new Map(state.threads),
  inbox: new Map(state.inbox),
  profiles: new Map(state.profiles),
  homes: new Map(state.homes),
  clock: { ...state.clock },
});
