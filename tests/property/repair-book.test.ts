import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airReadings, outlooksOf } from '../../src/repair/book.js';
import { remindersFor } from '../../src/repair/due.js';
import type { Fact, FactRecord } from '../../src/repair/facts.js';
import { entryNo, FIRST_JOINT, jobNo, personId } from '../../src/repair/ids.js';
import { foldJob } from '../../src/repair/job.js';
import { shareOf, type Outlook } from '../../src/repair/outlook.js';
import { celsius, instant, minutes, plus, type Instant } from '../../src/cure/units.js';
import { cardNamed } from '../support/card-shelf.js';
import { exampleShop } from '../support/example-shop.js';
import { on } from '../support/joint.js';

const SHOP = exampleShop();
const JOB = jobNo('501');
const START = on('08:00');
const TOMEK = personId('tomek');
const RUNS = { numRuns: 1000 };
/** A thousand stories take a while where many share a processor. */
const PATIENCE = 120_000;

/** A moment of its own for every fact: two things at the very same millisecond have no order but that of entering. */
const moments = (length: number) => fc.uniqueArray(fc.integer({ min: 1, max: 30 * 60 }), { minLength: length, maxLength: length }).map((list) => list.map((after) => plus(START, minutes(after))));

const cureFact = (card: string) => {
  const cure = { joint: FIRST_JOINT, card, run: 1 };
  const typed = { value: 0, unit: null };
  return fc.oneof<fc.Arbitrary<Fact>[]>(
    fc.constant({ type: 'moved', cure }),
    fc.constantFrom<Fact>({ type: 'lamp-on', joint: FIRST_JOINT }, { type: 'lamp-off', joint: FIRST_JOINT }, { type: 'lamp-found-off', joint: FIRST_JOINT }, { type: 'attended', joint: FIRST_JOINT }),
    fc.constantFrom(30, 35, 55, 60).map((setting): Fact => ({ type: 'lamp-set', joint: FIRST_JOINT, setting: celsius(setting), typed, lamp: null, heater: setting === 55 ? 'pad' : 'lamp' })),
    fc.integer({ min: 10, max: 90 }).map((value): Fact => ({ type: 'reading', joint: FIRST_JOINT, value: celsius(value), typed, method: 'tape' })),
    fc.integer({ min: 5, max: 30 }).map((value): Fact => ({ type: 'air', value: celsius(value), typed, humidity: 50 })),
    fc.record({ milestone: fc.constantFrom('handling' as const, 'full' as const), result: fc.constantFrom('hard' as const, 'soft' as const), role: fc.constantFrom('foreman' as const, 'other' as const) }).map((check): Fact => ({ type: 'checked', cure, ...check })),
    fc.constant({ type: 'put-off', cure, kind: 'handling' }),
    fc.constant({ type: 'released', cure, reason: 'judged' }),
    fc.integer({ min: 1, max: 8 }).map((millimetres): Fact => ({ type: 'depth', cure, millimetres })),
    fc.constantFrom<Fact>({ type: 'build-up', joint: FIRST_JOINT, buildUp: 'thin-skin' }, { type: 'build-up', joint: FIRST_JOINT, buildUp: 'two-sheets-with-flange' }),
  );
};

const record = (entry: number, happenedAt: Instant, fact: Fact): FactRecord => ({ entry: entryNo(entry), job: fact.type === 'air' ? null : JOB, happenedAt, enteredAt: happenedAt, by: TOMEK, fact });

/** A cure, closed at 08:00, and up to nine facts about it. */
const story = fc.constantFrom('P1', 'P2', 'K', 'F1', 'S1').chain((card) =>
  fc.array(cureFact(card), { maxLength: 9 }).chain((facts) =>
    moments(facts.length).map((times): FactRecord[] => {
      const cure = { joint: FIRST_JOINT, card, run: 1 };
      const begun = [record(1, START, { type: 'cure-opened', cure, card: cardNamed(card), owner: TOMEK }), record(1, START, { type: 'pasted', cure, earliest: START }), record(1, START, { type: 'closed', cure })];
      return [...begun, ...facts.map((fact, index) => record(index + 2, times[index] ?? START, fact))];
    }),
  ),
);

const look = (facts: readonly FactRecord[]): Outlook[] => outlooksOf(foldJob(JOB, facts.filter((one) => one.job !== null)), SHOP, airReadings(facts.filter((one) => one.job === null)));
const plan = (facts: readonly FactRecord[], now: Instant | null = null) => look(facts).flatMap((outlook) => remindersFor(outlook, SHOP, now));
/** What people would see of it; entry numbers differ with the order of entering. */
const seen = (facts: readonly FactRecord[]) => look(facts).map(({ milestones, open, openPassed, heat, stages }) => ({ milestones, open, openPassed, heat, stages }));

describe('the book', () => {
  it('does not depend on the order in which the same facts were entered', () => {
    const shuffled = story.chain((facts) => fc.tuple(fc.constant(facts), fc.shuffledSubarray(facts, { minLength: facts.length, maxLength: facts.length })));
    fc.assert(
      fc.property(shuffled, ([facts, other]) => {
        // What opened the cure is one entry and stays in its order.
        const mixed = [...facts.slice(0, 3), ...other.filter((one) => one.entry > 1)];
        expect(seen(mixed)).toEqual(seen(facts));
      }),
      RUNS,
    );
  }, PATIENCE);

  it('stands exactly as before when an entry is taken back', () => {
    fc.assert(
      fc.property(story, cureFact('P1'), moments(1), (facts, fact, [at = START]) => {
        const undone: Fact = { type: 'undone', entry: entryNo(99) };
        const after = [...facts, record(99, at, fact), { ...record(100, at, undone), job: fact.type === 'air' ? null : JOB }];
        expect(look(after)).toEqual(look(facts));
        expect(plan(after)).toEqual(plan(facts));
      }),
      RUNS,
    );
  }, PATIENCE);

  it('is never made earlier by a panel that moved', () => {
    fc.assert(
      fc.property(story, moments(1), (facts, [at = START]) => {
        const cure = look(facts)[0]?.cure.ref ?? { joint: FIRST_JOINT, card: 'P1', run: 1 };
        const due = (list: readonly FactRecord[]) => look(list).flatMap((outlook) => outlook.milestones.map((one) => one.forecast.dueAt ?? Infinity));
        const before = due(facts);
        expect(due([...facts, record(99, at, { type: 'moved', cure })]).every((moved, index) => moved >= (before[index] ?? 0))).toBe(true);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('shows a share from 0 to 1', () => {
    fc.assert(
      fc.property(story, moments(1), (facts, [at = START]) => {
        for (const outlook of look(facts)) {
          for (const one of outlook.milestones) expect(shareOf(one, at)).toSatisfy((share: number) => share >= 0 && share <= 1);
        }
      }),
      RUNS,
    );
  }, PATIENCE);
});

describe('the plan of reminders', () => {
  it('is the same when made again, and has no key twice', () => {
    fc.assert(
      fc.property(story, (facts) => {
        const first = plan(facts);
        expect(plan(facts)).toEqual(first);
        expect(new Set(first.map((one) => one.key)).size).toBe(first.length);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('says nothing before its time, and nothing ordinary outside shop hours', () => {
    fc.assert(
      fc.property(story, moments(1), (facts, [now = START]) => {
        for (const one of plan(facts, now)) {
          if (one.kind !== 'open-limit') expect(one.ringAt).toBeGreaterThanOrEqual(one.dueAt);
          if (one.route === 'bundle') expect(new Date(one.ringAt).toISOString().slice(11, 16)).toBe('07:30');
        }
      }),
      RUNS,
    );
  }, PATIENCE);

  it('never says the same key twice and comes to an end, whenever the bot wakes up', () => {
    fc.assert(
      fc.property(story, fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 1, maxLength: 8 }), (facts, sleeps) => {
        const said = new Set<string>();
        let book = [...facts];
        let now = facts.reduce((at, one) => Math.max(at, one.happenedAt), 0);
        for (const sleep of sleeps) {
          now += sleep * 60_000;
          for (let rounds = 0; ; rounds += 1) {
            const ringing = plan(book, instant(now)).filter((one) => one.ringAt <= now);
            const [first] = ringing;
            if (first === undefined) break;
            expect(rounds).toBeLessThan(20);
            expect(said.has(first.key)).toBe(false);
            said.add(first.key);
            const { kind, round, step, dueAt, to, cure } = first;
            book = [...book, { ...record(1000 + said.size, instant(now), { type: 'reminder-raised', cure, kind, round, step, dueAt, to }) }];
          }
        }
      }),
      RUNS,
    );
  }, PATIENCE);
});
