import { describe, expect, it } from 'vitest';
import type { Delivery } from '../../src/clerk/message.js';
import { instant } from '../../src/cure/units.js';
import { jobNo } from '../../src/repair/ids.js';
import type { Book } from '../../src/store/book.js';
import { EVERY_BOOK } from './every-book.js';
import { answer, at, delivery, HOME, inChannel, inThreadOf, JOB } from './store-samples.js';

const queue = (book: Book, ...deliveries: Delivery[]): void => { book.transact((tx) => { tx.queue(deliveries); }); };
const waiting = (book: Book, minute = 0): string[] => book.nextWaiting(at(minute)).map(({ delivery: { key } }) => key);
const RECEIPT = { channel: 'C1', ts: '1.000100' };

describe.each(EVERY_BOOK)('outbox of the $name', ({ open }) => {
  it('gives a delivery back exactly as it was queued, and may send it at once even when the clock was set back', () => {
    const book = open();
    const full = delivery('k', { kind: 'only-for', channel: 'C9', thread: '5.5', user: 'U1' }, { urgent: true, mention: 'U2' });
    queue(book, full, delivery('t', inThreadOf(JOB)));
    const [first, second] = book.nextWaiting(at(-120));
    expect(first?.delivery).toStrictEqual(full);
    expect(first).toMatchObject({ state: 'waiting', attempts: 0 });
    expect(second?.delivery).toStrictEqual(delivery('t', inThreadOf(JOB)));
    expect(book.earliestNotBefore()).toBeLessThanOrEqual(at(-120));
  });

  it('takes a key once for ever', () => {
    const book = open();
    queue(book, delivery('a'), delivery('a', HOME, { answer: answer('other') }));
    expect(book.nextWaiting(at(0))[0]?.delivery.answer).toEqual(answer('a'));
    book.claim('a', at(0));
    book.sent('a', at(0), RECEIPT);
    queue(book, delivery('a'));
    expect(waiting(book)).toEqual([]);
    expect(book.earliestNotBefore()).toBeNull();
  });

  it('hands out one row per lane: urgent first, then the oldest', () => {
    const book = open();
    queue(book, delivery('h1'), delivery('c1', inChannel('C1')), delivery('h2', inThreadOf(JOB)), delivery('h3', HOME, { urgent: true }), delivery('h4', HOME, { urgent: true }));
    expect(waiting(book)).toEqual(['c1', 'h3']);
    const order: string[] = [];
    for (let key = waiting(book)[1]; key !== undefined; key = waiting(book)[1]) {
      book.claim(key, at(0));
      book.sent(key, at(0), RECEIPT);
      order.push(key);
    }
    expect(order).toEqual(['h3', 'h4', 'h1', 'h2']);
    expect(waiting(book)).toEqual(['c1']);
  });

  it('hands out nothing from a lane that is sending, and lets nobody claim there', () => {
    const book = open();
    queue(book, delivery('h1'), delivery('h2', HOME, { urgent: true }), delivery('c1', inChannel('C1')));
    book.claim('h1', at(0));
    expect(waiting(book)).toEqual(['c1']);
    expect(() => { book.claim('h2', at(0)); }).toThrow();
    expect(() => { book.claim('h1', at(0)); }).toThrow();
    expect(book.unknown()).toMatchObject([{ delivery: { key: 'h1' }, state: 'sending', attempts: 1 }]);
    book.refused('h1', at(1), 'no such channel');
    expect(book.unknown()).toEqual([]);
    expect(waiting(book)).toEqual(['c1', 'h2']);
  });

  it('counts attempts and holds a row back until it may go; the next of its lane may pass', () => {
    const book = open();
    queue(book, delivery('a'));
    book.claim('a', at(0));
    book.retry('a', at(5), 'busy');
    expect(waiting(book, 4)).toEqual([]);
    expect(book.earliestNotBefore()).toBe(at(5));
    expect(book.nextWaiting(at(5))).toMatchObject([{ attempts: 1, notBefore: at(5) }]);
    queue(book, delivery('b'));
    expect(waiting(book, 4)).toEqual(['b']);
    expect(waiting(book, 5)).toEqual(['a']);
    book.claim('a', at(5));
    expect(book.unknown()).toMatchObject([{ attempts: 2 }]);
  });

  it('refuses an outcome for a row that is not being sent', () => {
    const book = open();
    queue(book, delivery('a'));
    for (const outcome of [
      () => { book.sent('a', at(0), RECEIPT); },
      () => { book.refused('a', at(0), 'x'); },
      () => { book.retry('a', at(0), 'x'); },
      () => { book.claim('nobody', at(0)); },
    ]) expect(outcome).toThrow();
    expect(waiting(book)).toEqual(['a']);
  });

  it('knows the thread of a job and the job of a thread; a new head replaces the old one', () => {
    const book = open();
    expect([book.threadOf(JOB), book.jobOfThread('C1', '1')]).toEqual([null, null]);
    book.saveThread(JOB, at(0), { channel: 'C1', ts: '1' });
    expect([book.threadOf(JOB), book.jobOfThread('C1', '1'), book.jobOfThread('C1', '2')]).toEqual([{ channel: 'C1', ts: '1' }, JOB, null]);
    book.saveThread(JOB, at(1), { channel: 'C1', ts: '2' });
    expect([book.jobOfThread('C1', '1'), book.jobOfThread('C1', '2')]).toEqual([null, JOB]);
    book.saveThread(jobNo('502'), at(2), { channel: 'C1', ts: '2' });
    expect([book.threadOf(JOB), book.jobOfThread('C1', '2')]).toEqual([null, '502']);
  });

  it('keeps what came in until it is handled, in order, and its id for 24 hours', () => {
    const book = open();
    const day = 24 * 60;
    expect(book.receive('b', at(0), '{"n":1}')).toBe(true);
    expect(book.receive('a', at(0), '{"n":2}')).toBe(true);
    expect(book.receive('b', at(1), '{"n":3}')).toBe(false);
    expect(book.received()).toEqual([{ id: 'b', payload: '{"n":1}' }, { id: 'a', payload: '{"n":2}' }]);
    book.handled('b');
    book.handled('unheard-of');
    expect(book.received()).toEqual([{ id: 'a', payload: '{"n":2}' }]);
    expect(book.receive('b', at(day), 'again')).toBe(false);
    expect(book.receive('a', at(day * 2), 'never handled')).toBe(false);
    expect(book.receive('b', instant(at(day) + 1), 'a day later')).toBe(true);
    expect(book.received().map(({ id }) => id)).toEqual(['a', 'b']);
  });

  it('knows who has opened a home tab, for a fortnight', () => {
    const book = open();
    const fortnight = 14 * 24 * 60;
    book.homeOpened('U2', at(0));
    book.homeOpened('U1', at(0));
    book.homeOpened('U3', at(5));
    expect([book.homesSince(at(0)), book.homesSince(at(1))]).toEqual([['U1', 'U2', 'U3'], ['U3']]);
    book.homeOpened('U1', at(9));
    book.homeGone('U3');
    expect(book.homesSince(at(0))).toEqual(['U2', 'U1']);
    book.homeOpened('U4', at(fortnight + 1));
    expect(book.homesSince(at(0))).toEqual(['U1', 'U4']);
  });

  it('keeps the names of profiles', () => {
    const book = open();
    expect(book.profileName('U1')).toBeNull();
    book.saveProfileName('U1', 'Ana', at(0));
    book.saveProfileName('U1', 'Ana B.', at(1));
    expect(book.profileName('U1')).toBe('Ana B.');
  });

  it('may be used inside a transaction, and is rolled back with it', () => {
    const book = open();
    queue(book, delivery('a'));
    expect(() => book.transact(() => {
      book.claim('a', at(0));
      book.receive('x', at(0), 'y');
      throw new Error('stop');
    })).toThrow('stop');
    expect([waiting(book), book.received()]).toEqual([['a'], []]);
  });
});
