import type { BookTransaction } from '../clerk/ports.js';
import { later, type Instant } from '../cure/units.js';
import type { Book } from './book.js';
import { memoryJournal } from './memory-journal.js';
import { memoryChatRows, memoryOutbox } from './memory-outbox.js';
import { memoryReminders } from './memory-reminders.js';
import { copyOf, emptyState, type MemoryState } from './memory-state.js';
import { forgottenBefore, fortnightBefore } from './keeping.js';

/** The book without a file: the same behaviour, gone with the process. The contract tests hold it to the SQLite one. */
export function memoryBook(): Book {
  let state = emptyState();
  let busy = false;
  const now = (): MemoryState => state;
  const { begin, ...journal } = memoryJournal(now);
  const { queue, ...outbox } = memoryOutbox(now);
  const book: BookTransaction = { ...journal, ...memoryReminders(now), ...talk(now), queue };

  return {
    transact: (work) => {
      if (busy) throw new Error('A transaction of the book is already open; use the one you have.');
      const before = copyOf(state);
      busy = true;
      begin();
      try {
        const result = work(book);
        if (result instanceof Promise) throw new Error('A transaction of the book cannot wait for a promise.');
        return result;
      } catch (error) {
        state = before;
        throw error;
      } finally {
        busy = false;
      }
    },
    postsAfter: (seq, limit) => state.posts.filter((post) => post.seq > seq).slice(0, limit),
    latestInstant: () => latest(state),
    saveClock: (at) => {
      state.clock.at = at;
    },
    timeKept: () => state.clock.kept ?? (state.clock.at !== null ? 'practice' : state.facts.length > 0 ? 'real' : null),
    keepTime: (kind) => {
      state.clock.kept ??= kind;
    },
    ...outbox,
    ...memoryChatRows(now),
    close: () => {
      state = emptyState();
    },
  };
}

function talk(now: () => MemoryState): Pick<BookTransaction, 'seen' | 'markSeen' | 'openJobs' | 'setOpen' | 'guests' | 'saveGuest' | 'ask' | 'asked' | 'settled' | 'askInReply' | 'askedInReplies' | 'replySettled' | 'offer' | 'offeredUnder' | 'keepSheet' | 'post' | 'postsTo'> {
  return {
    seen: (id) => {
      const kept = now().seen.get(id);
      return kept === undefined ? null : { replyId: kept.replyId, answer: kept.answer };
    },
    markSeen: (id, at, answer) => {
      const { seen } = now();
      for (const [old, kept] of seen) if (kept.at < forgottenBefore(at)) seen.delete(old);
      if (seen.has(id)) throw new Error(`Message ${id} was already marked as seen.`);
      seen.set(id, { ...answer, at });
    },
    openJobs: () => [...now().openJobs].sort((one, other) => one.length - other.length || (one < other ? -1 : 1)),
    setOpen: (job, open) => {
      if (open) now().openJobs.add(job);
      else now().openJobs.delete(job);
    },
    guests: () => [...now().guests].map(([id, name]) => ({ id, name })).sort((one, other) => (one.id < other.id ? -1 : 1)),
    saveGuest: (id, name) => {
      now().guests.set(id, name);
    },
    postsTo: (person, after) => now().posts.flatMap(({ to, at, about }) => (to === person && at > after ? [{ at, kind: about.kind }] : [])),
    ask: ({ seq }) => {
      now().asked.add(seq);
    },
    asked: (job) => now().posts.filter((post) => now().asked.has(post.seq) && post.about.job === job),
    settled: (seq) => {
      now().asked.delete(seq);
    },
    askInReply: (reply) => {
      const { askedReplies } = now();
      for (const [key, { at }] of askedReplies) if (at < fortnightBefore(reply.at)) askedReplies.delete(key);
      if (!askedReplies.has(reply.key)) askedReplies.set(reply.key, reply);
    },
    askedInReplies: (job, limit) =>
      [...now().askedReplies.values()]
        .filter((reply) => reply.job === job)
        .sort((one, other) => one.at - other.at || (one.key < other.key ? -1 : 1))
        .slice(-limit),
    replySettled: (key) => {
      now().askedReplies.delete(key);
    },
    offer: (reply, lines, at) => {
      const { offers } = now();
      for (const [old, kept] of offers) if (kept.at < fortnightBefore(at)) offers.delete(old);
      offers.set(reply, { at, lines });
    },
    offeredUnder: (reply) => {
      const posts = now().posts.filter(({ key }) => key === reply);
      return now().offers.get(reply)?.lines ?? (posts.length === 0 ? null : posts.flatMap(({ answer }) => answer.buttons.map(({ line }) => line)));
    },
    keepSheet: (job, answer) => {
      const before = now().sheets.get(job);
      const text = JSON.stringify(answer);
      if (before?.answer === text) return null;
      const change = (before?.change ?? 0) + 1;
      now().sheets.set(job, { change, answer: text });
      return change;
    },
    post: (fresh) => {
      const { posts } = now();
      const post = { ...fresh, seq: (posts.at(-1)?.seq ?? 0) + 1 };
      posts.push(post);
      return post;
    },
  };
}

function latest({ facts, posts, clock }: MemoryState): Instant | null {
  const moments = [...facts.map((record) => record.enteredAt), ...posts.map((post) => post.at), ...(clock.at === null ? [] : [clock.at])];
  const [first, ...rest] = moments;
  return first === undefined ? null : rest.reduce(later, first);
}
