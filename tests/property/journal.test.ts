import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Clerk } from '../../src/clerk/clerk.js';
import { NO_ADDRESSING } from '../../src/clerk/desk-ports.js';
import { messageId } from '../../src/clerk/message.js';
import { openStandingClock, type StandingClock } from '../../src/clock/standing-clock.js';
import { minutes, plus } from '../../src/cure/units.js';
import { jobNo, personId } from '../../src/repair/ids.js';
import type { Book } from '../../src/store/book.js';
import { memoryBook } from '../../src/store/memory-book.js';
import { CARDS } from '../support/card-shelf.js';
import { PROCEDURES } from '../support/procedure-shelf.js';
import { exampleShop } from '../support/example-shop.js';
import { on } from '../support/joint.js';
import { quietLog } from '../support/quiet-log.js';

const JOBS = ['501', '502'];
const PEOPLE = ['tomek', 'wren', 'ines'];

/** One thing somebody types, some minutes after the thing before. */
const step = fc.record({
  after: fc.integer({ min: 0, max: 240 }),
  by: fc.constantFrom(...PEOPLE),
  line: fc.oneof(
    fc.tuple(fc.constantFrom('paste', 'cure', 'closed'), fc.constantFrom(...JOBS), fc.constantFrom('P1', 'P2', 'K', 'F1')).map((words) => words.join(' ')),
    fc.tuple(fc.constantFrom('moved', 'off', 'on', 'up', 'hard', 'soft', 'later', 'stay', 'scrap', 'why', 'when'), fc.constantFrom(...JOBS)).map((words) => words.join(' ')),
    fc.tuple(fc.constantFrom('lamp', 'read'), fc.constantFrom(...JOBS), fc.integer({ min: 10, max: 90 })).map((words) => words.join(' ')),
    fc.tuple(fc.constant('air'), fc.integer({ min: 5, max: 30 })).map((words) => words.join(' ')),
    fc.constantFrom('undo', "off 501 don't know when", 'closed 501 20 min ago', 'who waits', 'nonsense'),
  ),
});

interface Desk {
  readonly clerk: Clerk;
  readonly clock: StandingClock;
}

const fail = (error: unknown): void => { throw error; };

function deskOver(store: Book, clock: StandingClock = openStandingClock(on('Mon 08:00'), fail)): Desk {
  return { clock, clerk: new Clerk({ store, clock, shop: exampleShop(), cards: CARDS, procedures: PROCEDURES, addressing: NO_ADDRESSING, log: quietLog(), clockRingsBells: true }) };
}

function work({ clerk, clock }: Desk, steps: readonly { after: number; by: string; line: string }[]): void {
  clerk.catchUp();
  for (const [index, { after, by, line }] of steps.entries()) {
    clock.advanceTo(plus(clock.now(), minutes(after)));
    clerk.say({ id: messageId(`m${index}`), from: { id: personId(by), name: by }, text: line, thread: null, returnPath: { chat: 'page' } });
  }
}

const standing = (clerk: Clerk, store: Book): unknown => ({
  waiting: clerk.waiting(),
  sheets: JOBS.map((job) => clerk.jobSheet(job)),
  reminders: JOBS.map((job) => store.transact((tx) => tx.remindersOf(jobNo(job)))),
});

describe('the journal', () => {
  it('replayed gives the live state', () => {
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 25 }), (steps) => {
        const store = memoryBook();
        const live = deskOver(store);
        work(live, steps);
        expect(standing(deskOver(store, live.clock).clerk, store)).toEqual(standing(live.clerk, store));
      }),
      { numRuns: 150 },
    );
  });

  it('stores a message that comes twice once', () => {
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 15 }), (steps) => {
        const [once, twice] = [memoryBook(), memoryBook()];
        work(deskOver(once), steps);
        const desk = deskOver(twice);
        desk.clerk.catchUp();
        for (const [index, { after, by, line }] of steps.entries()) {
          desk.clock.advanceTo(plus(desk.clock.now(), minutes(after)));
          const message = { id: messageId(`m${index}`), from: { id: personId(by), name: by }, text: line, thread: null, returnPath: { chat: 'page' as const } };
          desk.clerk.say(message);
          desk.clerk.say(message);
        }
        expect(JOBS.map((job) => twice.transact((tx) => tx.factsOf(jobNo(job))))).toEqual(JOBS.map((job) => once.transact((tx) => tx.factsOf(jobNo(job)))));
      }),
      { numRuns: 100 },
    );
  });

  it('never holds a post twice, and none before its time', () => {
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 25 }), (steps) => {
        const store = memoryBook();
        const desk = deskOver(store);
        work(desk, steps);
        desk.clock.advanceTo(plus(desk.clock.now(), minutes(3 * 24 * 60)));
        const posts = store.postsAfter(0, 10_000);
        expect(new Set(posts.map((post) => post.key)).size).toBe(posts.length);
        // The open limit is announced before it comes; everything else not before it is due.
        expect(posts.filter((post) => post.about.kind !== 'open-limit' && post.at < post.dueAt)).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });
});
