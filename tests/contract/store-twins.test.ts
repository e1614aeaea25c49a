import fc from 'fast-check';
import { expect, it } from 'vitest';
import { messageId } from '../../src/clerk/message.js';
import { entryNo, jobNo, personId } from '../../src/repair/ids.js';
import type { Book } from '../../src/store/book.js';
import { memoryBook } from '../../src/store/memory-book.js';
import { openTempBook } from '../support/temp-book.js';
import { answer, at, CLOSED, delivery, enter, HOME, inChannel, post, reminder } from './store-samples.js';

type Step = (book: Book) => unknown;

const key = fc.constantFrom('a', 'b', 'c', 'd');
const minute = fc.integer({ min: -5, max: 2000 });
const job = fc.constantFrom('501', '502').map(jobNo);
const person = fc.constantFrom('ana', 'ben').map(personId);
const target = fc.constantFrom(HOME, inChannel('C1'), inChannel('C2'));

const steps: fc.Arbitrary<Step> = fc.oneof(
  fc.record({ by: person, job: fc.option(job), minute }).map((about): Step => (book) => enter(book, [CLOSED], { by: about.by, job: about.job, enteredAt: at(about.minute) })),
  fc.record({ by: person, entry: fc.integer({ min: 1, max: 6 }) }).map(({ by, entry }): Step => (book) => enter(book, [{ type: 'undone', entry: entryNo(entry) }], { by })),
  fc.record({ job, plan: fc.uniqueArray(fc.tuple(key, minute), { selector: ([name]) => name }) }).map(({ job: of, plan }): Step => (book) => {
    book.transact((tx) => { tx.replan(of, plan.map(([name, when]) => reminder(name, at(when), { job: of }))); });
  }),
  fc.tuple(job, fc.boolean()).map(([of, open]): Step => (book) => { book.transact((tx) => { tx.setOpen(of, open); }); }),
  fc.tuple(key, minute).map(([name, when]): Step => (book) => book.transact((tx) => tx.post(post(name, at(when))))),
  fc.tuple(key, minute).map(([name, when]): Step => (book) => { book.transact((tx) => { tx.markSeen(messageId(name), at(when), { replyId: name, answer: answer(name) }); }); }),
  fc.tuple(fc.array(fc.tuple(key, target, fc.boolean())), fc.boolean()).map(([rows, fails]): Step => (book) => {
    book.transact((tx) => {
      tx.queue(rows.map(([name, to, urgent]) => delivery(name, to, { urgent })));
      if (fails) throw new Error('fails');
    });
  }),
  fc.tuple(key, minute).map(([name, when]): Step => (book) => { book.claim(name, at(when)); }),
  fc.tuple(key, minute).map(([name, when]): Step => (book) => { book.sent(name, at(when), { channel: 'C1', ts: name }); }),
  fc.tuple(key, minute).map(([name, when]): Step => (book) => { book.retry(name, at(when), 'again'); }),
  fc.tuple(key, minute).map(([name, when]): Step => (book) => { book.refused(name, at(when), 'no'); }),
  fc.tuple(job, key).map(([of, ts]): Step => (book) => { book.saveThread(of, at(0), { channel: 'C1', ts }); }),
  fc.tuple(key, minute).map(([name, when]): Step => (book) => book.receive(name, at(when), name)),
  key.map((name): Step => (book) => { book.handled(name); }),
);

const outcomeOf = (step: Step, book: Book): unknown => {
  try {
    return step(book);
  } catch {
    return 'refused';
  }
};

const everythingIn = (book: Book, moment: number): unknown => ({
  ...book.transact((tx) => ({
    jobs: [jobNo('501'), jobNo('502')].map((of) => [tx.factsOf(of), tx.remindersOf(of)]),
    shop: tx.shopFacts(3),
    last: [tx.lastEntryOf(personId('ana')), tx.lastEntryOf(personId('ben'))],
    next: [tx.nextEntry(), tx.nextRing()],
    open: tx.openJobs(),
    ringing: tx.ringing(at(moment), 3),
    seen: ['a', 'b', 'c', 'd'].map((id) => tx.seen(messageId(id))),
  })),
  posts: book.postsAfter(1, 5),
  latest: book.latestInstant(),
  waiting: book.nextWaiting(at(moment)),
  unknown: book.unknown(),
  earliest: book.earliestNotBefore(),
  threads: [book.threadOf(jobNo('501')), book.jobOfThread('C1', 'a')],
  received: book.received(),
});

it('no run of steps tells the SQLite book from the in-memory one', () => {
  fc.assert(
    fc.property(fc.array(steps, { minLength: 1, maxLength: 40 }), minute, (run, moment) => {
      const stored = openTempBook();
      const twin = memoryBook();
      for (const step of run) {
        expect(outcomeOf(step, stored)).toStrictEqual(outcomeOf(step, twin));
        expect(everythingIn(stored, moment)).toStrictEqual(everythingIn(twin, moment));
      }
    }),
    { numRuns: 60 },
  );
});
