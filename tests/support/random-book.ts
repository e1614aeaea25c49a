import fc from 'fast-check';
import type { MaterialCard, MilestoneKind } from '../../src/cure/card.js';
import { celsius, minus, minutes, type Instant } from '../../src/cure/units.js';
import { BUILD_UPS } from '../../src/cure/warm-up.js';
import { airReadings, outlooksOf } from '../../src/repair/book.js';
import type { CureRef } from '../../src/repair/cure-ref.js';
import type { Fact, FactRecord } from '../../src/repair/facts.js';
import { entryNo, FIRST_JOINT, jobNo, personId } from '../../src/repair/ids.js';
import { foldJob } from '../../src/repair/job.js';
import type { Outlook } from '../../src/repair/outlook.js';
import type { Shop } from '../../src/repair/shop.js';
import { CARDS } from './card-shelf.js';
import { exampleShop } from './example-shop.js';
import { anyCard } from './random-card.js';
import { anyStart, heaterOf, jointTemperature, momentAround } from './random-history.js';

/** Everything that was entered about one job and its shop. */
export interface RandomBook {
  readonly shop: Shop;
  readonly start: Instant;
  readonly cure: CureRef;
  /** In order of happening; every fact after the three of the start has a moment of its own. */
  readonly facts: readonly FactRecord[];
}

const JOB = jobNo('501');
const TYPED = { value: 0, unit: null };
const ABOUT = { joint: FIRST_JOINT };
const HOURS = { opens: 7 * 60 + 30, closes: 17 * 60 };

/** A shop whose zone never changes its clocks; holidays in both weeks. */
export const anyShop: fc.Arbitrary<Shop> = fc
  .record({ air: fc.constantFrom(celsius(20), null), night: fc.constantFrom(celsius(12), celsius(20), null), closedDays: fc.constantFrom(null, celsius(5), celsius(16)), holidays: fc.subarray(['2026-03-04', '2026-03-06', '2026-03-09']), saturday: fc.boolean() })
  .map(({ saturday, ...climate }) => exampleShop({ ...climate, zone: 'UTC', hours: { 1: HOURS, 2: HOURS, 3: HOURS, 4: HOURS, 5: HOURS, 6: saturday ? HOURS : null, 7: null } }));

/** Facts of every kind that can change what is due, and answers to checks. */
export function anyFact(cure: CureRef): fc.Arbitrary<Fact> {
  return fc.oneof<fc.Arbitrary<Fact>[]>(heatFact, heatFact, readingFact, readingFact, airFact, jointFact(cure), answerFact(cure));
}

export const readingFact: fc.Arbitrary<Fact> = fc.record({ type: fc.constant('reading' as const), joint: fc.constant(FIRST_JOINT), value: jointTemperature, typed: fc.constant(TYPED), method: fc.constantFrom('tape' as const, 'contact' as const, 'bare' as const) });

export const airFact: fc.Arbitrary<Fact> = fc
  .tuple(fc.integer({ min: 2, max: 38 }), fc.option(fc.integer({ min: 0, max: 100 })))
  .map(([value, humidity]): Fact => ({ type: 'air', value: celsius(value), typed: TYPED, humidity }));

export const heatFact: fc.Arbitrary<Fact> = fc.oneof(
  fc.constantFrom<Fact>({ type: 'lamp-on', ...ABOUT }, { type: 'lamp-off', ...ABOUT }, { type: 'lamp-found-off', ...ABOUT }, { type: 'attended', ...ABOUT }),
  fc.record({ type: fc.constant('lamp-set' as const), joint: fc.constant(FIRST_JOINT), setting: fc.constantFrom(30, 35, 55, 60).map(celsius), typed: fc.constant(TYPED), lamp: fc.constant(null), heater: heaterOf }),
);

/** What is said about the joint and its material. */
const jointFact = (cure: CureRef): fc.Arbitrary<Fact> =>
  fc.oneof<fc.Arbitrary<Fact>[]>(
    fc.constant({ type: 'moved', cure }),
    fc.integer({ min: 1, max: 9 }).map((millimetres): Fact => ({ type: 'depth', cure, millimetres })),
    fc.constantFrom(...BUILD_UPS).map((buildUp): Fact => ({ type: 'build-up', ...ABOUT, buildUp })),
    fc.constantFrom(...CARDS).map((card): Fact => ({ type: 'card-corrected', cure, as: { joint: FIRST_JOINT, card: card.name, run: 2 }, card })),
  );

const milestone: fc.Arbitrary<MilestoneKind> = fc.constantFrom('handling', 'full', 'sand', 'through', 'dwell');

/** Answers, and what the clerk was told to leave for later. */
export const answerFact = (cure: CureRef): fc.Arbitrary<Fact> =>
  fc.oneof<fc.Arbitrary<Fact>[]>(
    fc.record({ type: fc.constant('checked' as const), cure: fc.constant(cure), milestone, result: fc.constantFrom('hard' as const, 'soft' as const), role: fc.constantFrom('foreman' as const, 'other' as const) }),
    fc.constant({ type: 'put-off', cure, kind: 'handling' }),
    fc.constant({ type: 'released', cure, reason: 'judged' }),
  );

export const record = (entry: number, happenedAt: Instant, fact: Fact): FactRecord => ({ entry: entryNo(entry), job: fact.type === 'air' ? null : JOB, happenedAt, enteredAt: happenedAt, by: personId('tomek'), fact });
export const undone = (entry: number, at: Instant, fact: Fact): FactRecord => ({ ...record(entry + 1, at, { type: 'undone', entry: entryNo(entry) }), job: fact.type === 'air' ? null : JOB });

/** A cure and what was entered about it, in a shop. */
export const bookWith = (card: fc.Arbitrary<MaterialCard>, fact: (cure: CureRef) => fc.Arbitrary<Fact>): fc.Arbitrary<RandomBook> =>
  fc.tuple(card, anyStart, anyShop).chain(([frozen, start, shop]) => {
    const cure: CureRef = { joint: FIRST_JOINT, card: frozen.name, run: 1 };
    const told = fc.tuple(momentAround(start), fact(cure));
    return fc.record({ pastedBefore: fc.integer({ min: 0, max: 90 }), events: fc.uniqueArray(told, { maxLength: 9, selector: ([at]) => at }) }).map(({ pastedBefore, events }) => {
      const pasted = minus(start, minutes(pastedBefore));
      const begun = [record(1, pasted, { type: 'cure-opened', cure, card: frozen, owner: personId('tomek') }), record(1, pasted, { type: 'pasted', cure, earliest: pasted }), record(1, start, { type: 'closed', cure })];
      const rest = [...events].sort(([a], [b]) => a - b).map(([at, one], index) => record(index + 2, at, one));
      return { shop, start, cure, facts: [...begun, ...rest] };
    });
  });

export const randomBook: fc.Arbitrary<RandomBook> = bookWith(anyCard, anyFact);

/** All outlooks of a book. */
export const outlooks = ({ shop }: Pick<RandomBook, 'shop'>, facts: readonly FactRecord[]): Outlook[] =>
  outlooksOf(foldJob(JOB, facts.filter((one) => one.job !== null)), shop, airReadings(facts.filter((one) => one.job === null)));
