import { describe, expect, it } from 'vitest';
import { instant } from '../../src/cure/units.js';
import { jobNo } from '../../src/repair/ids.js';
import type { Reminder } from '../../src/repair/reminder.js';
import type { Book } from '../../src/store/book.js';
import { EVERY_BOOK } from './every-book.js';
import { at, BEN, JOB, reminder } from './store-samples.js';

const OTHER = jobNo('502');
const plan = (book: Book, reminders: readonly Reminder[], job = JOB): void => { book.transact((tx) => { tx.replan(job, reminders); }); };
const planned = (book: Book, job = JOB): Reminder[] => book.transact((tx) => tx.remindersOf(job));

describe.each(EVERY_BOOK)('reminders of the $name', ({ open }) => {
  it('makes what stands equal to the plan: added, changed, removed', () => {
    const book = open();
    plan(book, [reminder('b', at(20)), reminder('a', at(10))]);
    plan(book, [reminder('z', at(5), { job: OTHER })], OTHER);
    expect(planned(book)).toStrictEqual([reminder('a', at(10)), reminder('b', at(20))]);

    const changed = reminder('b', at(21), { dueAt: at(20), route: 'bundle', to: 'channel', step: 1, round: 2 });
    plan(book, [changed, reminder('c', instant(at(30) + 0.5), { to: BEN })]);
    expect(planned(book)).toStrictEqual([changed, reminder('c', instant(at(30) + 0.5), { to: BEN })]);
    expect(planned(book, OTHER)).toHaveLength(1);

    plan(book, []);
    expect(planned(book)).toEqual([]);
    expect(book.transact((tx) => tx.nextRing())).toBe(at(5));
  });

  it('rings what has come, never before, earliest first and then by key', () => {
    const book = open();
    plan(book, [reminder('d', at(10)), reminder('b', at(10)), reminder('a', at(12)), reminder('e', at(13))]);
    plan(book, [reminder('c', at(10), { job: OTHER }), reminder('b', at(9), { job: OTHER })], OTHER);
    const ringing = (when: number, limit = 99): string[] => book.transact((tx) => tx.ringing(instant(when), limit)).map(({ job, key }) => `${job} ${key}`);
    expect(ringing(at(9) - 1)).toEqual([]);
    expect(ringing(at(9))).toEqual(['502 b']);
    expect(ringing(at(12))).toEqual(['502 b', '501 b', '502 c', '501 d', '501 a']);
    expect(ringing(at(12), 3)).toEqual(['502 b', '501 b', '502 c']);
  });

  it('knows the next ring', () => {
    const book = open();
    const next = () => book.transact((tx) => tx.nextRing());
    expect(next()).toBeNull();
    plan(book, [reminder('a', at(12)), reminder('b', at(11), { dueAt: at(1) })]);
    expect(next()).toBe(at(11));
    plan(book, [reminder('a', at(12))]);
    expect(next()).toBe(at(12));
  });

  it('refuses a plan that contradicts itself, and leaves what stands', () => {
    const book = open();
    plan(book, [reminder('a', at(1))]);
    expect(() => { plan(book, [reminder('b', at(1)), reminder('b', at(2))]); }).toThrow('stands twice');
    expect(() => { plan(book, [reminder('b', at(1), { job: OTHER })]); }).toThrow('of job 502 stands in the plan of job 501');
    expect(planned(book)).toStrictEqual([reminder('a', at(1))]);
  });
});
