import { describe, expect, it } from 'vitest';
import { messageId } from '../../src/clerk/message.js';
import { celsius, instant } from '../../src/cure/units.js';
import type { Fact } from '../../src/repair/facts.js';
import { entryNo, jobNo, personId } from '../../src/repair/ids.js';
import { EVERY_BOOK } from './every-book.js';
import { AIR, ANA, answer, at, BEN, CLOSED, CURE, delivery, enter, EVERY_FACT, HOME, JOB, post, record, reminder } from './store-samples.js';

describe.each(EVERY_BOOK)('$name', ({ open }) => {
  it('stores everything of a transaction, or nothing of it when it fails', () => {
    const book = open();
    const write = (fails: boolean): void => {
      book.transact((tx) => {
        const entry = tx.nextEntry();
        tx.append([record(entry, CLOSED)]);
        tx.setOpen(JOB, true);
        tx.replan(JOB, [reminder('r', at(10))]);
        tx.post(post('p', at(0)));
        tx.queue([delivery('d', HOME)]);
        tx.markSeen(messageId('m'), at(0), { replyId: 'x', answer: answer('x') });
        if (fails) throw new Error('the lights went out');
      });
    };
    const look = () => book.transact((tx) => ({ facts: tx.factsOf(JOB).length, jobs: tx.openJobs(), ring: tx.nextRing(), seen: tx.seen(messageId('m'))?.replyId ?? null, posts: book.postsAfter(0, 9).length, out: book.nextWaiting(at(0)).length }));

    expect(() => { write(true); }).toThrow('the lights went out');
    expect(look()).toEqual({ facts: 0, jobs: [], ring: null, seen: null, posts: 0, out: 0 });
    write(false);
    expect(look()).toEqual({ facts: 1, jobs: [JOB], ring: at(10), seen: 'x', posts: 1, out: 1 });
  });

  it('refuses a transaction inside a transaction, and one that waits', () => {
    const book = open();
    expect(() => book.transact(() => book.transact(() => 1))).toThrow('already open');
    expect(() => book.transact((tx) => { tx.setOpen(JOB, true); return Promise.resolve(); })).toThrow('cannot wait');
    expect(book.transact((tx) => tx.openJobs())).toEqual([]);
  });

  it('gives back every kind of fact exactly as it was written, in the order it was entered', () => {
    const book = open();
    const written = book.transact((tx) => {
      const entry = tx.nextEntry();
      const records = EVERY_FACT.map((fact) => record(entry, fact, { happenedAt: instant(at(-7) + 0.25) }));
      tx.append(records);
      return records;
    });
    expect(book.transact((tx) => tx.factsOf(JOB))).toStrictEqual(written);
    expect(book.transact((tx) => tx.factsOfEntry(entryNo(1)))).toStrictEqual(written);
    expect(book.transact((tx) => tx.factsOf(jobNo('502')))).toEqual([]);
  });

  it('refuses a fact that could not be read back, and stores nothing of its transaction', () => {
    const book = open();
    expect(() => enter(book, [CLOSED, { ...AIR, value: celsius(Number.NaN) }])).toThrow();
    expect(book.transact((tx) => tx.factsOf(JOB))).toEqual([]);
  });

  it('numbers entries upwards; a number that was not used is free again', () => {
    const book = open();
    expect(book.transact((tx) => [tx.nextEntry(), tx.nextEntry()])).toEqual([1, 2]);
    expect(enter(book, [CLOSED])).toBe(1);
    expect(enter(book, [AIR], { job: null })).toBe(2);
    expect(book.transact((tx) => tx.nextEntry())).toBe(3);
  });

  it('gives the newest facts of the shop, oldest first', () => {
    const book = open();
    enter(book, [CLOSED]);
    for (const minute of [1, 2, 3]) enter(book, [AIR], { job: null, enteredAt: at(minute) });
    expect(book.transact((tx) => tx.shopFacts(2)).map((fact) => fact.enteredAt)).toEqual([at(2), at(3)]);
    expect(book.transact((tx) => tx.shopFacts(9))).toHaveLength(3);
  });

  it('knows for ever who was taken on and about whom the foreman was asked, but for what was taken back', () => {
    const book = open();
    const asked: Fact = { type: 'adoption-asked', person: BEN };
    const adopted: Fact = { type: 'adopted', person: BEN, name: 'Ben', role: 'technician' };
    enter(book, [asked], { job: null });
    enter(book, [adopted], { job: null });
    const regretted = enter(book, [{ ...adopted, role: 'foreman' }], { job: null });
    enter(book, [{ type: 'undone', entry: regretted }], { job: null });
    for (let count = 0; count < 3; count += 1) enter(book, [AIR], { job: null });
    expect(book.transact((tx) => tx.adoptions().map(({ fact }) => fact))).toEqual([asked, adopted]);
    expect(book.transact((tx) => tx.shopFacts(3).map(({ fact }) => fact.type))).toEqual(['air', 'air', 'air']);
  });

  it('finds the last thing a person did, whole, and never what was undone, an undo, a reminder or a bell', () => {
    const book = open();
    const last = (by = ANA) => book.transact((tx) => tx.lastEntryOf(by)?.entry ?? null);
    expect(last()).toBeNull();
    const first = enter(book, [CLOSED, AIR]);
    const other = enter(book, [CLOSED], { by: BEN });
    enter(book, [{ type: 'bell', bell: 'closing', dueAt: at(0), posted: true }], { job: null });
    enter(book, [{ type: 'reminder-raised', cure: CURE, kind: 'handling', round: 0, step: 0, dueAt: at(0), to: ANA }]);
    expect(last()).toBe(first);
    expect(last(BEN)).toBe(other);
    expect(book.transact((tx) => tx.lastEntryOf(ANA)?.facts.map(({ fact }) => fact))).toEqual([CLOSED, AIR]);
    const second = enter(book, [{ type: 'moved', cure: CURE }]);
    expect(last()).toBe(second);
    enter(book, [{ type: 'undone', entry: second }], { by: BEN });
    expect(last()).toBe(first);
    expect(last(BEN)).toBe(other);
    enter(book, [{ type: 'undone', entry: first }]);
    expect(last()).toBeNull();
  });

  it('takes an entry for its maker\'s, whoever is named in the rest of it', () => {
    const book = open();
    const own = enter(book, [CLOSED], { by: BEN });
    book.transact((tx) => {
      const entry = tx.nextEntry();
      const fact = (by: typeof BEN) => ({ entry, job: JOB, happenedAt: at(1), enteredAt: at(1), by, fact: CLOSED });
      tx.append([fact(ANA), fact(BEN)]);
    });
    expect(book.transact((tx) => tx.lastEntryOf(BEN)?.entry)).toBe(own);
    expect(book.transact((tx) => tx.lastEntryOf(ANA)?.facts.length)).toBe(2);
  });

  it('tells what the bot said to a person after a moment', () => {
    const book = open();
    const post = (minute: number, to: typeof BEN) => book.transact((tx) => tx.post({ key: `k${minute}${to}`, at: at(minute), dueAt: at(minute), to, about: { job: null, joint: null, card: null, kind: 'bundle' }, answer: { tone: 'plain', lines: [], buttons: [] } }));
    for (const minute of [0, 1, 2]) post(minute, BEN);
    post(2, ANA);
    expect(book.transact((tx) => tx.postsTo(BEN, at(0)))).toEqual([{ at: at(1), kind: 'bundle' }, { at: at(2), kind: 'bundle' }]);
    expect(book.transact((tx) => tx.postsTo(BEN, at(2)))).toEqual([]);
  });

  it('refuses to undo an entry that is not in the book', () => {
    const book = open();
    expect(() => enter(book, [{ type: 'undone', entry: entryNo(7) }])).toThrow('Entry 7 is not in the book');
  });

  it('keeps the open jobs, once each, in the order of their numbers', () => {
    const book = open();
    const jobs = ['1000', '501', '99', '502'].map(jobNo);
    book.transact((tx) => { for (const job of [...jobs, ...jobs]) tx.setOpen(job, true); });
    book.transact((tx) => { tx.setOpen(jobNo('502'), false); tx.setOpen(jobNo('7'), false); });
    expect(book.transact((tx) => tx.openJobs())).toEqual(['99', '501', '1000']);
  });

  it('keeps the latest name of each guest', () => {
    const book = open();
    const save = (id: string, name: string): void => { book.transact((tx) => { tx.saveGuest(personId(id), name); }); };
    save('kim', 'Kim');
    save('jo', 'Jo');
    save('kim', 'Kim L.');
    save('jo', 'Jo');
    expect(book.transact((tx) => tx.guests())).toStrictEqual([{ id: 'jo', name: 'Jo' }, { id: 'kim', name: 'Kim L.' }]);
  });

  it('numbers posts in the order they were said', () => {
    const book = open();
    const first = post('a', at(1));
    const second = post('b', at(0), { to: 'channel', about: { job: null, joint: null, card: null, kind: 'bundle' } });
    expect(book.transact((tx) => [tx.post(first).seq, tx.post(second).seq])).toEqual([1, 2]);
    expect(book.postsAfter(0, 9)).toStrictEqual([{ ...first, seq: 1 }, { ...second, seq: 2 }]);
    expect(book.postsAfter(1, 9).map(({ key }) => key)).toEqual(['b']);
    expect(book.postsAfter(0, 1).map(({ key }) => key)).toEqual(['a']);
  });

  it('remembers an answered message for 24 hours', () => {
    const book = open();
    const mark = (id: string, minute: number): void => { book.transact((tx) => { tx.markSeen(messageId(id), at(minute), { replyId: `to-${id}`, answer: answer(id) }); }); };
    const seen = (id: string) => book.transact((tx) => tx.seen(messageId(id)));
    mark('a', 0);
    expect(seen('a')).toStrictEqual({ replyId: 'to-a', answer: answer('a') });
    expect(seen('b')).toBeNull();
    expect(() => { mark('a', 1); }).toThrow();
    mark('b', 24 * 60);
    expect(seen('a')).not.toBeNull();
    mark('c', 24 * 60 + 1);
    expect(seen('a')).toBeNull();
    expect(seen('b')).not.toBeNull();
  });

  it('knows the latest moment of entries, posts and the saved clock', () => {
    const book = open();
    expect(book.latestInstant()).toBeNull();
    enter(book, [CLOSED], { enteredAt: at(5), happenedAt: at(90) });
    enter(book, [CLOSED], { enteredAt: at(3) });
    expect(book.latestInstant()).toBe(at(5));
    book.transact((tx) => tx.post(post('a', at(6), { dueAt: at(80) })));
    expect(book.latestInstant()).toBe(at(6));
    book.saveClock(at(9));
    book.saveClock(at(8));
    expect(book.latestInstant()).toBe(at(8));
  });
});
