import fc from 'fast-check';
import { expect, it } from 'vitest';
import { minutes, plus } from '../../src/cure/units.js';
import { personId } from '../../src/repair/ids.js';
import { onShift } from '../../src/repair/on-shift.js';
import { busyUntil } from '../../src/repair/people-facts.js';
import { isOpen } from '../../src/repair/shop-hours.js';
import type { Person, ShopShift } from '../../src/repair/shop.js';
import { exampleShop } from '../support/example-shop.js';
import { on, said } from '../support/joint.js';
import { Shift } from '../support/shift.js';

const PEOPLE = ['ines', 'tomek', 'wren', 'bo'] as const;
const bo: Person = { id: personId('bo'), name: 'Bo', role: 'foreman', chatId: null, language: 'en', unit: null };

const anyShift: fc.Arbitrary<Omit<ShopShift, 'name'>> = fc
  .record({ days: fc.subarray([1, 2, 3, 4, 5, 6, 7], { minLength: 1 }), begins: fc.integer({ min: 0, max: 95 }), length: fc.integer({ min: 1, max: 64 }), people: fc.subarray([...PEOPLE], { minLength: 1 }) })
  .map(({ days, begins, length, people }) => ({ days, begins: begins * 15, ends: (begins + length) * 15, people: people.map(personId) }));

/** What people say about themselves and each other, at some minute of the first day from eight on. */
const anyWord = fc.record({ at: fc.integer({ min: 1, max: 900 }), who: fc.constantFrom(...PEOPLE), to: fc.constantFrom(...PEOPLE), word: fc.constantFrom('busy', 'hand', 'handover', 'accept', 'undo'), long: fc.integer({ min: 1, max: 240 }) });

type Word = typeof anyWord extends fc.Arbitrary<infer One> ? One : never;

function say(shift: Shift, at: string, { who, to, word, long }: Word): void {
  switch (word) {
    case 'busy':
      shift.says(who, at, { kind: 'busy', minutes: minutes(long) });
      return;
    case 'hand':
      shift.says(who, at, { kind: 'hand', job: '501', to });
      return;
    case 'handover':
      shift.says(who, at, { kind: 'handover', to, except: [] });
      return;
    case 'accept':
      shift.says(who, at, { kind: 'accept' });
      return;
    case 'undo':
      // Only what was said about people: the cure itself stays.
      if (shift.situation(who, on(at)).lastEntry()?.facts.every((one) => one.fact.type !== 'cure-opened') === true) shift.says(who, at, { kind: 'undo' });
  }
}

const START = on('08:00');

it('nobody hears the same twice and nothing is lost, whoever works, is busy, hands on or takes over', () => {
  fc.assert(
    fc.property(fc.array(anyShift, { maxLength: 4 }), fc.array(anyWord, { maxLength: 6 }), (some, words) => {
      const shifts = some.map((one, index) => ({ ...one, name: `s${index}` }));
      const shift = new Shift({ people: [...exampleShop().people, bo], shifts });
      // Seam filler, due at 15:00: nobody ever answers. The harness throws at whatever is said twice, or without end.
      shift.enters('tomek', '08:00', { kind: 'cure', job: '501', card: 'F1' });
      for (const word of words.toSorted((one, other) => one.at - other.at)) say(shift, said(plus(START, minutes(word.at))), word);
      shift.until('Sun 23:00');
      const posts = shift.posts.filter((post) => post.kind === 'sand');
      const heard = posts.map(({ step, to }) => `${step} ${to}`);
      expect(new Set(heard).size).toBe(heard.length);
      expect(posts.filter((post) => post.step === 3)).toHaveLength(1);
      // A shift always ends again, and then somebody is asked who takes over.
      expect(shift.plan().filter(({ kind }) => kind !== 'handover')).toEqual([]);
      for (const post of posts.filter((one) => one.route === 'alone')) {
        const { to } = post;
        if (to === 'channel') throw new Error('nobody in particular');
        const works = shifts.length === 0 ? isOpen(shift.shop, post.saidAt) : onShift(shift.shop, to, post.saidAt);
        // The giver of a handover that nobody has accepted yet hears it along with the taker.
        const along = shift.facts.some(({ fact, by, happenedAt }) => fact.type === 'handover-offered' && by === to && happenedAt <= post.saidAt);
        expect([said(post.saidAt), to, works || along]).toEqual([said(post.saidAt), to, true]);
        // Whoever gets busy in the very minute has heard it before.
        const before = { ...shift.people(), busy: shift.people().busy.filter((one) => one.from < post.saidAt) };
        expect(busyUntil(before, to, post.saidAt)).toBeNull();
      }
    }),
    { numRuns: 200 },
  );
}, 120_000);
