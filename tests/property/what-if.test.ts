import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airReadings, outlooksOf } from '../../src/repair/book.js';
import type { Fact, FactRecord } from '../../src/repair/facts.js';
import { entryNo, FIRST_JOINT, jobNo, personId } from '../../src/repair/ids.js';
import { NOTHING_SAID } from '../../src/repair/people-facts.js';
import { foldJob } from '../../src/repair/job.js';
import { isOver, needsReading, type Outlook } from '../../src/repair/outlook.js';
import { recipeOf } from '../../src/repair/heat-choices.js';
import type { Situation } from '../../src/repair/decision.js';
import { whatIf } from '../../src/repair/what-if.js';
import { heatEnds, supposeAir, supposeHeat, type Ground } from '../../src/repair/suppose.js';
import { celsius, minutes, plus, type Instant } from '../../src/cure/units.js';
import { CARDS, cardNamed } from '../support/card-shelf.js';
import { exampleShop } from '../support/example-shop.js';
import { on } from '../support/joint.js';
import { whatIfCommand } from '../support/questions.js';

const SHOP = exampleShop();
const JOB = jobNo('501');
const START = on('08:00');
const TOMEK = personId('tomek');
const RUNS = { numRuns: 1000 };
const PATIENCE = 120_000;
const TYPED = { value: 0, unit: null };

const record = (entry: number, happenedAt: Instant, fact: Fact): FactRecord => ({ entry: entryNo(entry), job: fact.type === 'air' ? null : JOB, happenedAt, enteredAt: happenedAt, by: TOMEK, fact });

const lampSet = (setting: number): Fact => ({ type: 'lamp-set', joint: FIRST_JOINT, setting: celsius(setting), typed: TYPED, lamp: null, heater: 'lamp' });
const reading = (value: number): Fact => ({ type: 'reading', joint: FIRST_JOINT, value: celsius(value), typed: TYPED, method: 'tape' });
const air = (value: number): Fact => ({ type: 'air', value: celsius(value), typed: TYPED, humidity: null });

const anyFact = fc.oneof<fc.Arbitrary<Fact>[]>(
  fc.constantFrom<Fact>({ type: 'lamp-on', joint: FIRST_JOINT }, { type: 'lamp-off', joint: FIRST_JOINT }, { type: 'lamp-found-off', joint: FIRST_JOINT }, { type: 'attended', joint: FIRST_JOINT }),
  fc.constantFrom(30, 35, 55, 60).map(lampSet),
  fc.integer({ min: 10, max: 70 }).map(reading),
  fc.integer({ min: 5, max: 30 }).map(air),
);

interface Story {
  readonly facts: readonly FactRecord[];
  /** After everything that was entered. */
  readonly now: Instant;
}

/** A cure closed at 08:00, up to six facts about it within thirty hours, and a moment after them. */
const storyOf = (...cards: readonly string[]): fc.Arbitrary<Story> => fc.tuple(fc.constantFrom(...cards), fc.array(fc.tuple(fc.integer({ min: 1, max: 30 * 60 }), anyFact), { maxLength: 6 }), fc.integer({ min: 1, max: 600 })).map(([card, happened, after]) => {
  const cure = { joint: FIRST_JOINT, card, run: 1 };
  const begun = [record(1, START, { type: 'cure-opened', cure, card: cardNamed(card), owner: TOMEK }), record(1, START, { type: 'closed', cure })];
  const last = Math.max(0, ...happened.map(([at]) => at));
  return { facts: [...begun, ...happened.map(([at, fact], index) => record(index + 2, plus(START, minutes(at)), fact))], now: plus(START, minutes(last + after)) };
});

const story = storyOf('P1', 'P2', 'K', 'F1', 'W1', 'C1', 'G1');

const airOf = (facts: readonly FactRecord[]) => airReadings(facts.filter((one) => one.job === null));
const look = (facts: readonly FactRecord[]): Outlook => outlooksOf(foldJob(JOB, facts.filter((one) => one.job !== null)), SHOP, airOf(facts))[0] ?? expect.fail('no cure');
const ground = ({ facts, now }: Story): Ground => ({ cure: look(facts).cure, shop: SHOP, air: airOf(facts), from: now });
const situation = ({ facts, now }: Story): Situation => ({
  now,
  by: TOMEK,
  shop: SHOP,
  cards: CARDS,
  procedures: [],
  book: { job: () => foldJob(JOB, facts.filter((one) => one.job !== null)), openJobs: () => [JOB], air: airOf(facts), people: NOTHING_SAID },
  thread: null,
  lastEntry: () => null,
  entry: () => [],
});
/** What people see of it. */
const seen = ({ milestones, stages, heat }: Outlook) => ({ milestones, stages, heat });

describe('a supposition', () => {
  it('says of a lamp what the book says once that lamp is lit and read', () => {
    fc.assert(
      fc.property(story, fc.constantFrom(35, 40, 60), (told, setting) => {
        const { facts, now } = told;
        const { outlook, readAt } = supposeHeat({ kind: 'heater', heater: 'lamp', setting: celsius(setting) }, ground(told));
        const then = readAt === null ? [] : [record(99, readAt, reading(setting))];
        expect(seen(outlook)).toEqual(seen(look([...facts, record(98, now, lampSet(setting)), ...then])));
        const dueIn20 = plus(now, minutes(20));
        expect(readAt).toBe(needsReading(outlook.cure) && dueIn20 < heatEnds(ground(told)) ? dueIn20 : null);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('says of other air what the book says once it is read', () => {
    fc.assert(
      fc.property(story, fc.integer({ min: 5, max: 35 }), (told, value) => {
        expect(seen(supposeAir(celsius(value), ground(told)).outlook)).toEqual(seen(look([...told.facts, record(99, told.now, air(value))])));
      }),
      RUNS,
    );
  }, PATIENCE);

  it('says of a recipe what the book says once each stage is lit', () => {
    fc.assert(
      fc.property(storyOf('P2', 'K'), (told) => {
        const stages = recipeOf(ground(told).cure.card, ['full']) ?? expect.fail('no recipe');
        const { outlook } = supposeHeat({ kind: 'recipe', stages }, ground(told));
        const lit = outlook.cure.heat.filter((event) => event.kind === 'lamp-set' && event.at >= told.now).flatMap((event) => (event.kind === 'lamp-set' ? [record(99, event.at, lampSet(event.setting))] : []));
        expect(seen(outlook)).toEqual(seen(look([...told.facts, ...lit])));
      }),
      RUNS,
    );
  }, PATIENCE);

  it('stands beside what the book says by itself, and leaves the book as it is', () => {
    fc.assert(
      fc.property(story, fc.constantFrom(35, 60), (told, value) => {
        const before = look(told.facts);
        const result = whatIf(whatIfCommand({ setting: { value, unit: 'C' } }), situation(told));
        expect(result.ok ? result.whatIf.standing : result.refusal).toEqual(isOver(before) ? { code: 'nothing-runs', job: JOB } : before);
        expect(look(told.facts)).toEqual(before);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('gives what was due already no earlier time', () => {
    fc.assert(
      fc.property(story, (told) => {
        const due = look(told.facts).milestones[0]?.check.dueAt ?? null;
        if (due === null || due > told.now) return;
        const { outlook } = supposeHeat({ kind: 'heater', heater: 'lamp', setting: celsius(60) }, ground(told));
        const then = outlook.milestones[0]?.check.dueAt ?? null;
        // Heat may cost what was believed before (a colder reading caps it), and never gives what was due already an earlier time.
        if (then !== null) expect(then).toBeGreaterThanOrEqual(due);
      }),
      RUNS,
    );
  }, PATIENCE);
});
