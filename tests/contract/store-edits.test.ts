import { describe, expect, it } from 'vitest';
import { jobNo, type JobNo } from '../../src/repair/ids.js';
import type { AskedReply } from '../../src/clerk/ports.js';
import { messageId, type DeliveryTarget } from '../../src/clerk/message.js';
import type { Book } from '../../src/store/book.js';
import { EVERY_BOOK } from './every-book.js';
import { AIR, ANA, answer, at, BEN, CLOSED, delivery, enter, HOME, JOB, post } from './store-samples.js';

const EDIT: DeliveryTarget = { kind: 'edit', of: 'a' };
const SHEET: DeliveryTarget = { kind: 'thread-head', job: JOB };
const waiting = (book: Book): string[] => book.nextWaiting(at(0)).map(({ delivery: { key } }) => key);

describe.each(EVERY_BOOK)('edits and questions of the $name', ({ open }) => {
  it('a question stands until it is settled, by job or among the people', () => {
    const book = open();
    const first = book.transact((tx) => tx.post(post('a', at(0))));
    const second = book.transact((tx) => tx.post(post('b', at(1))));
    const people = book.transact((tx) => tx.post(post('c', at(2), { about: { job: null, joint: null, card: null, kind: 'stranger' } })));
    book.transact((tx) => { for (const one of [second, first, people, first]) tx.ask(one); });
    const asked = () => book.transact((tx) => [tx.asked(JOB), tx.asked(jobNo('502')), tx.asked(null)].map((posts) => posts.map(({ key }) => key)));
    expect(asked()).toEqual([['a', 'b'], [], ['c']]);
    expect(book.transact((tx) => tx.asked(JOB)[0])).toStrictEqual(first);
    book.transact((tx) => { tx.settled(first.seq); });
    expect(asked()).toEqual([['b'], [], ['c']]);
  });

  it('an answer with buttons is remembered until one of them was done, by job, and for a fortnight', () => {
    const book = open();
    const reply = (key: string, minute: number, job: JobNo | null = JOB): AskedReply => ({ key, job, reader: ANA, at: at(minute), answer: answer(key) });
    const asked = (job: JobNo | null, limit = 9) => book.transact((tx) => tx.askedInReplies(job, limit)).map(({ key }) => key);
    book.transact((tx) => { for (const one of [reply('b', 1), reply('a', 0), reply('c', 1), reply('d', 1, null), reply('a', 5)]) tx.askInReply(one); });
    expect([asked(JOB), asked(null), asked(jobNo('502')), asked(JOB, 2)]).toEqual([['a', 'b', 'c'], ['d'], [], ['b', 'c']]);
    expect(book.transact((tx) => tx.askedInReplies(JOB, 9)[0])).toStrictEqual(reply('a', 0));
    book.transact((tx) => { tx.replySettled('b'); });
    expect(asked(JOB)).toEqual(['a', 'c']);
    expect(() => book.transact((tx) => { tx.replySettled('c'); throw new Error('stop'); })).toThrow('stop');
    book.transact((tx) => { tx.askInReply(reply('e', 14 * 24 * 60 + 1)); });
    expect([asked(JOB), asked(null)]).toEqual([['c', 'e'], ['d']]);
  });

  it('knows which lines stood under an answer or a post: posts for good, answers for a fortnight', () => {
    const book = open();
    const under = (reply: string) => book.transact((tx) => tx.offeredUnder(reply));
    book.transact((tx) => { tx.post(post('a', at(0))); });
    book.transact((tx) => { tx.offer(messageId('page:1'), ['on 501', 'off 501'], at(0)); });
    book.transact((tx) => { tx.offer(messageId('page:1'), ['off 501'], at(1)); });
    expect([under('a'), under('page:1'), under('page:2')]).toEqual([answer('a').buttons.map(({ line }) => line), ['off 501'], null]);
    book.transact((tx) => { tx.offer(messageId('page:3'), [], at(14 * 24 * 60 + 2)); });
    expect([under('a') === null, under('page:1'), under('page:3')]).toEqual([false, null, []]);
  });

  it('a question is not settled when the transaction fails', () => {
    const book = open();
    const one = book.transact((tx) => { const stored = tx.post(post('a', at(0))); tx.ask(stored); return stored; });
    expect(() => book.transact((tx) => { tx.settled(one.seq); throw new Error('stop'); })).toThrow('stop');
    expect(book.transact((tx) => tx.asked(JOB).length)).toBe(1);
  });

  it('a sheet counts its changes and says when nothing changed', () => {
    const book = open();
    const kept = ['x', 'x', 'y', 'y', 'x'].map((text) => book.transact((tx) => tx.keepSheet(JOB, answer(text))));
    expect(kept).toEqual([1, null, 2, null, 3]);
    expect(book.transact((tx) => tx.keepSheet(jobNo('502'), answer('x')))).toBe(1);
  });

  it('a later edit of the same place takes the place of one that waits, and of no other', () => {
    const book = open();
    book.transact((tx) => { tx.queue([delivery('e1', EDIT), delivery('s1', SHEET), delivery('h', HOME)]); });
    book.transact((tx) => { tx.queue([delivery('e2', EDIT)]); });
    const order: string[] = [];
    for (let key = waiting(book)[0]; key !== undefined; key = waiting(book)[0]) {
      book.claim(key, at(0));
      if (key === 'e2') book.transact((tx) => { tx.queue([delivery('e3', EDIT)]); });
      book.sent(key, at(0), { channel: 'C1', ts: key });
      order.push(key);
    }
    // What is on its way stays; the next one follows it.
    expect(order).toEqual(['s1', 'e2', 'e3', 'h']);
  });

  it('knows where a sent delivery stands', () => {
    const book = open();
    book.transact((tx) => { tx.queue([delivery('a'), delivery('b')]); });
    expect([book.receiptOf('a'), book.receiptOf('nobody')]).toEqual(['waiting', null]);
    book.claim('a', at(0));
    expect(book.receiptOf('a')).toBe('waiting');
    book.sent('a', at(0), { channel: 'C1', ts: '1.2' });
    book.claim('b', at(0));
    book.refused('b', at(0), 'no');
    expect([book.receiptOf('a'), book.receiptOf('b')]).toEqual([{ channel: 'C1', ts: '1.2' }, null]);
  });

  it('gives what a person did, newest first, without what was taken back', () => {
    const book = open();
    enter(book, [CLOSED, AIR], { by: ANA });
    const wrong = enter(book, [CLOSED], { by: ANA });
    enter(book, [{ type: 'undone', entry: wrong }], { by: ANA });
    enter(book, [AIR], { by: BEN });
    enter(book, [CLOSED], { by: ANA });
    const types = (limit: number) => book.transact((tx) => tx.factsBy(ANA, limit)).map(({ entry, fact }) => `${entry} ${fact.type}`);
    expect(types(9)).toEqual(['5 closed', '1 air', '1 closed']);
    expect(types(1)).toEqual(['5 closed']);
  });
});
