import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MaterialCard } from '../../src/cure/card.js';
import { forecast } from '../../src/cure/forecast.js';
import type { HeatEvent, JointHistory } from '../../src/cure/history.js';
import { celsius, type Celsius } from '../../src/cure/units.js';
import type { Fact, FactRecord } from '../../src/repair/facts.js';
import type { Shop } from '../../src/repair/shop.js';
import { outlooks, randomBook, type RandomBook } from '../support/random-book.js';
import { anyCard } from '../support/random-card.js';
import { airOf, lampBeliefs, randomPast } from '../support/random-history.js';

const RUNS = { numRuns: 10_000 };
/** Ten thousand histories take a while where many share a processor. */
const PATIENCE = 120_000;
const HOTTEST = 250;

const NEVER = Infinity;
const dueOf = (card: MaterialCard, one: JointHistory): number[] => forecast(card, one).map(({ dueAt }) => dueAt ?? NEVER);
const noneEarlier = (colder: readonly number[], asItWas: readonly number[]): boolean => colder.every((due, index) => due >= (asItWas[index] ?? NEVER));
const less = fc.integer({ min: 1, max: 300 }).map((tenths) => tenths / 10);
const cooled = (value: Celsius, degrees: number): Celsius => celsius(value - degrees);
const chosenOf = <One>(list: readonly One[], pick: number): One | undefined => list[pick % Math.max(1, list.length)];

/**
 * A colder reading is only colder where it leaves the belief about the heat as it was (after "found off" a warm joint shows
 * that the heat is back, and how warm is told from the reading before), and where it was no reading over the maximum, which
 * counts nothing at all.
 */
function isOnlyColder(asItWas: readonly HeatEvent[], colder: readonly HeatEvent[], was: Celsius, card: MaterialCard): boolean {
  return was <= (card.maxPanel ?? HOTTEST) && lampBeliefs(colder).join() === lampBeliefs(asItWas).join();
}

describe('what is colder never makes a strength milestone earlier', () => {
  it('one reading of the joint', () => {
    fc.assert(
      fc.property(anyCard, randomPast, fc.nat(), less, (card, { history }, pick, degrees) => {
        const chosen = chosenOf(history.heat.filter((event) => event.kind === 'reading'), pick);
        if (chosen === undefined) return;
        const heat = history.heat.map((event) => (event === chosen ? { ...chosen, value: cooled(chosen.value, degrees) } : event));
        if (isOnlyColder(history.heat, heat, chosen.value, card)) expect(noneEarlier(dueOf(card, { ...history, heat }), dueOf(card, history))).toBe(true);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('one reading of the air', () => {
    fc.assert(
      fc.property(anyCard, randomPast, fc.nat(), less, (card, { history, given }, pick, degrees) => {
        const chosen = chosenOf(given.readings, pick);
        const readings = given.readings.map((one) => (one === chosen ? { ...one, value: cooled(one.value, degrees) } : one));
        expect(noneEarlier(dueOf(card, { ...history, air: airOf(history.start, { ...given, readings }) }), dueOf(card, history))).toBe(true);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('the night, also where nobody knows it any more', () => {
    fc.assert(
      fc.property(anyCard, randomPast, fc.option(less), (card, { history, given }, degrees) => {
        const night = degrees === null || given.night === null ? null : cooled(given.night, degrees);
        expect(noneEarlier(dueOf(card, { ...history, air: airOf(history.start, { ...given, night }) }), dueOf(card, history))).toBe(true);
      }),
      RUNS,
    );
  }, PATIENCE);
});

/** Due times of every milestone of every cure. */
const dueIn = (book: Pick<RandomBook, 'shop'>, facts: readonly FactRecord[]): number[] => outlooks(book, facts).flatMap((one) => one.milestones.map(({ forecast: { dueAt } }) => dueAt ?? NEVER));

function withColder(facts: readonly FactRecord[], chosen: FactRecord | undefined, degrees: number): FactRecord[] {
  const colder = (fact: Fact): Fact => (fact.type === 'reading' || fact.type === 'air' ? { ...fact, value: cooled(fact.value, degrees) } : fact);
  return facts.map((one) => (one === chosen ? { ...one, fact: colder(one.fact) } : one));
}

const heatIn = (book: RandomBook, facts: readonly FactRecord[]): HeatEvent[] => outlooks(book, facts).flatMap(({ history }) => history?.heat ?? []);
const hottestOf = (cards: readonly MaterialCard[]): number => Math.min(...cards.map((card) => card.maxPanel ?? HOTTEST));

describe('what was entered colder never makes a strength milestone earlier', () => {
  it('one reading of the joint or of the air', () => {
    fc.assert(
      fc.property(randomBook, fc.nat(), less, (book, pick, degrees) => {
        const chosen = chosenOf(book.facts.filter(({ fact }) => fact.type === 'reading' || fact.type === 'air'), pick);
        if (chosen === undefined) return;
        const colder = withColder(book.facts, chosen, degrees);
        const cards = outlooks(book, book.facts).map(({ cure }) => cure.card);
        const sameHeat = lampBeliefs(heatIn(book, colder)).join() === lampBeliefs(heatIn(book, book.facts)).join();
        if (chosen.fact.type === 'reading' && (!sameHeat || chosen.fact.value > hottestOf(cards))) return;
        expect(noneEarlier(dueIn(book, colder), dueIn(book, book.facts))).toBe(true);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('the usual air, the night, the days on which the shop is closed', () => {
    const setting = fc.constantFrom<('air' | 'night' | 'closedDays')[]>('air', 'night', 'closedDays');
    fc.assert(
      fc.property(randomBook, setting, fc.option(less), (book, which, degrees) => {
        const was = book.shop[which];
        // Without a figure of its own a closed day is as any night.
        const colder: Shop = { ...book.shop, [which]: was === null ? closedFrom(which, book.shop, degrees) : degrees === null && which !== 'closedDays' ? null : cooled(was, degrees ?? 1) };
        expect(noneEarlier(dueIn({ shop: colder }, book.facts), dueIn(book, book.facts))).toBe(true);
      }),
      RUNS,
    );
  }, PATIENCE);
});

const closedFrom = (which: string, { night }: Shop, degrees: number | null): Celsius | null => (which === 'closedDays' && night !== null ? cooled(night, degrees ?? 0) : null);
