import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MilestoneKind } from '../../src/cure/card.js';
import { instant } from '../../src/cure/units.js';
import type { Fact, FactRecord } from '../../src/repair/facts.js';
import type { Outlook } from '../../src/repair/outlook.js';
import { airFact, answerFact, anyFact, heatFact, outlooks, randomBook, record, undone, type RandomBook } from '../support/random-book.js';
import { momentAround } from '../support/random-history.js';

const RUNS = { numRuns: 10_000 };
/** Ten thousand books take a while where many share a processor. */
const PATIENCE = 120_000;

/**
 * All that people would see; who entered what and when differs with the order of entering. So does whether the foreman knew of
 * damp metal when a hold was let go on: a decision covers what stood in the book by then.
 */
const seen = (book: RandomBook, facts: readonly FactRecord[]): unknown[] =>
  outlooks(book, facts).map(({ cure, history, air, milestones, open, openPassed, dew, heat, stages }) => ({ card: cure.card, depth: cure.depthMillimetres, buildUp: cure.buildUp, history, air, milestones, open, openPassed, dew: dew === null ? null : { point: dew.point, margin: dew.metal?.margin }, heat, stages }));

describe('what was entered', () => {
  it('stands exactly as before when any one entry is taken back', () => {
    const more = randomBook.chain((book) => fc.tuple(fc.constant(book), momentAround(book.start), anyFact(book.cure)));
    fc.assert(
      fc.property(more, ([book, at, fact]) => {
        expect(outlooks(book, [...book.facts, record(90, at, fact), undone(90, at, fact)])).toEqual(outlooks(book, book.facts));
      }),
      RUNS,
    );
  }, PATIENCE);

  it('gives the same outlook in whichever order it was entered', () => {
    const shuffled = randomBook.chain((book) => fc.tuple(fc.constant(book), fc.shuffledSubarray(book.facts.slice(3), { minLength: book.facts.length - 3 })));
    fc.assert(
      fc.property(shuffled, ([book, others]) => {
        // What opened and closed the cure was one message; all else is entered later than it happened.
        const late = others.map((one, index): FactRecord => ({ ...record(index + 2, one.happenedAt, one.fact), enteredAt: instant(book.start + 10 * 86_400_000 + index) }));
        expect(seen(book, [...book.facts.slice(0, 3), ...late])).toEqual(seen(book, book.facts));
      }),
      RUNS,
    );
  }, PATIENCE);
});

/** How the milestones stand that were due and answered by some moment. */
const settledBy = (outlook: Outlook, kinds: readonly MilestoneKind[]): unknown[] => outlook.milestones.filter(({ kind }) => kinds.includes(kind)).map(({ kind, forecast: { dueAt }, check }) => [kind, dueAt, check]);

/**
 * Facts that, as the last that happened, say nothing about the time before them. Not among them: a reading (a colder one reaches back to the reading
 * before it), "found off" (back to the last sign of life), a correction and a moved panel. A reading of the air tells
 * nothing of the time before either, except that the shop was open or closed as always: so it is asked of shops that have no
 * other temperature on closed days, and without humidity: a drier reading reaches back to the one before.
 */
const harmless = ({ cure, shop }: RandomBook): fc.Arbitrary<Fact> => {
  const heat = heatFact.filter((fact) => fact.type !== 'lamp-found-off');
  const answer = answerFact(cure).filter((fact) => fact.type !== 'checked');
  const air = airFact.map((fact): Fact => (fact.type === 'air' ? { ...fact, humidity: null } : fact));
  return shop.closedDays === null ? fc.oneof(heat, answer, air) : fc.oneof(heat, answer);
};

describe('a forecast', () => {
  it('is not touched by what happens after its due time, nor is a check that confirmed it', () => {
    const later = randomBook.chain((book) => fc.tuple(fc.constant(book), fc.integer({ min: 1, max: 4000 }), harmless(book)));
    fc.assert(
      fc.property(later, ([book, after, fact]) => {
        const last = book.facts.reduce<number>((at, one) => Math.max(at, one.happenedAt), book.start);
        const at = instant(last + after * 60_000);
        const then = outlooks(book, [...book.facts, record(90, at, fact)]);
        for (const [index, outlook] of outlooks(book, book.facts).entries()) {
          const due = outlook.milestones.flatMap(({ kind, forecast: { dueAt } }) => (dueAt !== null && dueAt <= at ? [kind] : []));
          const same = then[index];
          expect(same === undefined ? null : settledBy(same, due)).toEqual(settledBy(outlook, due));
        }
      }),
      RUNS,
    );
  }, PATIENCE);

  it('is the same however often and whenever it is asked for', () => {
    fc.assert(
      fc.property(randomBook, (book) => {
        expect(outlooks(book, structuredClone(book.facts))).toEqual(outlooks(book, book.facts));
      }),
      RUNS,
    );
  }, PATIENCE);
});
