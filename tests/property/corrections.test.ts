import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { celsius, instant, minutes, plus, type Instant } from '../../src/cure/units.js';
import { airReadings, outlooksOf } from '../../src/repair/book.js';
import { remindersFor } from '../../src/repair/due.js';
import type { CureRef } from '../../src/repair/cure-ref.js';
import type { Fact, FactRecord } from '../../src/repair/facts.js';
import { entryNo, FIRST_JOINT, jobNo, personId } from '../../src/repair/ids.js';
import { foldJob } from '../../src/repair/job.js';
import type { Outlook } from '../../src/repair/outlook.js';
import { cardNamed } from '../support/card-shelf.js';
import { exampleShop } from '../support/example-shop.js';
import { on } from '../support/joint.js';

const SHOP = exampleShop();
const JOB = jobNo('501');
const START = on('08:00');
const TOMEK = personId('tomek');
const RUNS = { numRuns: 400 };
const PATIENCE = 120_000;
const CARD_NAMES = ['P1', 'P2', 'K', 'F1', 'S1', 'C1', 'G1'];
const typed = { value: 0, unit: null };

const called = (card: string, run = 1): CureRef => ({ joint: FIRST_JOINT, card, run });
const record = (entry: number, after: number, fact: Fact): FactRecord => {
  const at = plus(START, minutes(after));
  return { entry: entryNo(entry), job: fact.type === 'air' ? null : JOB, happenedAt: at, enteredAt: at, by: TOMEK, fact };
};
const undo = (entry: number, of: number, after: number): FactRecord => record(entry, after, { type: 'undone', entry: entryNo(of) });
const corrected = (entry: number, after: number, cure: CureRef, as: CureRef): FactRecord => record(entry, after, { type: 'card-corrected', cure, as, card: cardNamed(as.card) });

/** What people enter about a cure, whatever it is called at the time; `after`: minutes after the first paste. */
type Told = (cure: CureRef) => Fact;
interface Step {
  readonly after: number;
  readonly told: Told;
}

const told = fc.oneof<fc.Arbitrary<Told>[]>(
  fc.constantFrom<Told>((cure) => ({ type: 'closed', cure }), (cure) => ({ type: 'moved', cure })),
  fc.constantFrom<Fact>({ type: 'lamp-on', joint: FIRST_JOINT }, { type: 'lamp-off', joint: FIRST_JOINT }, { type: 'lamp-found-off', joint: FIRST_JOINT }).map((fact) => () => fact),
  fc.record({ setting: fc.constantFrom(30, 35, 60), heater: fc.constantFrom('lamp' as const, 'pad' as const) }).map(({ setting, heater }) => () => ({ type: 'lamp-set', joint: FIRST_JOINT, setting: celsius(setting), typed, lamp: null, heater })),
  fc.integer({ min: 5, max: 90 }).map((value) => () => ({ type: 'reading', joint: FIRST_JOINT, value: celsius(value), typed, method: 'tape' })),
  fc.record({ value: fc.integer({ min: 5, max: 30 }), humidity: fc.option(fc.integer({ min: 20, max: 95 })) }).map(({ value, humidity }) => () => ({ type: 'air', value: celsius(value), typed, humidity })),
  fc.integer({ min: 1, max: 8 }).map((millimetres) => (cure) => ({ type: 'depth', cure, millimetres })),
  fc.record({ milestone: fc.constantFrom('handling' as const, 'full' as const, 'through' as const), result: fc.constantFrom('hard' as const, 'soft' as const), role: fc.constantFrom('foreman' as const, 'other' as const) }).map((check) => (cure) => ({ type: 'checked', cure, ...check })),
  fc.constantFrom('handling' as const, 'still-on' as const).map((kind) => (cure) => ({ type: 'reminder-raised', cure, kind, round: 1, step: 0, dueAt: START, to: TOMEK })),
);

const decided: Told[] = [(cure) => ({ type: 'released', cure, reason: 'judged' }), (cure) => ({ type: 'reminder-raised', cure, kind: 'decision', round: 0, step: 0, dueAt: START, to: TOMEK })];
const toldOrDecided = fc.oneof(told, fc.constantFrom(...decided));

/** In order of happening, one thing a minute: two at the very same moment have no order but that of entering. */
const steps = (one: fc.Arbitrary<Told>, maxLength: number) =>
  fc.uniqueArray(fc.integer({ min: 1, max: 1200 }), { maxLength }).chain((times) =>
    fc.tuple(...times.sort((a, b) => a - b).map((after) => one.map((fact): Step => ({ after, told: fact })))),
  );

const names = fc.shuffledSubarray(CARD_NAMES, { minLength: 3, maxLength: 3 });

const begun = (card: string): FactRecord[] => [record(1, 0, { type: 'cure-opened', cure: called(card), card: cardNamed(card), owner: TOMEK }), record(1, 0, { type: 'pasted', cure: called(card), earliest: START })];
const entered = (list: readonly Step[], cure: CureRef, from = 10): FactRecord[] => list.map(({ after, told: fact }, index) => record(from + index, after, fact(cure)));

const look = (facts: readonly FactRecord[]): Outlook[] => outlooksOf(foldJob(JOB, facts.filter((one) => one.job !== null)), SHOP, airReadings(facts.filter((one) => one.job === null)));
const plan = (facts: readonly FactRecord[], now: Instant | null = null) => look(facts).flatMap((outlook) => remindersFor(outlook, SHOP, now));
/** What follows from facts and card alone, whatever the cure is called. */
const course = (facts: readonly FactRecord[]) => look(facts).map(({ milestones, open, openPassed, overMaximum, dew, heat, stages, history }) => ({ milestones, open, openPassed, overMaximum, dew, heat, stages, history }));

describe('a card that was wrong', () => {
  it('leaves the course that the right card has from the start, unless a foreman had decided on the wrong one', () => {
    fc.assert(
      fc.property(names, steps(told, 10), steps(told, 4), ([wrong = '', right = ''], before, since) => {
        const facts = [...begun(wrong), ...entered(before, called(wrong)), corrected(50, 1201, called(wrong), called(right)), ...entered(since.map((one) => ({ ...one, after: one.after + 1300 })), called(right), 60)];
        const always = [...begun(right), ...entered(before, called(right)), ...entered(since.map((one) => ({ ...one, after: one.after + 1300 })), called(right), 60)];
        expect(course(facts)).toEqual(course(always));
      }),
      RUNS,
    );
  }, PATIENCE);

  it('stands exactly as before when the correction is taken back', () => {
    fc.assert(
      fc.property(names, steps(toldOrDecided, 10), ([one = '', other = ''], before) => {
        const facts = [...begun(one), ...entered(before, called(one))];
        const back = [...facts, corrected(50, 1201, called(one), called(other)), undo(51, 50, 1202)];
        expect(look(back)).toEqual(look(facts));
        expect(plan(back)).toEqual(plan(facts));
      }),
      RUNS,
    );
  }, PATIENCE);

  it('keeps what was entered in between when the correction is taken back', () => {
    fc.assert(
      fc.property(names, steps(toldOrDecided, 8), steps(told, 5), ([one = '', other = ''], before, since) => {
        const later = since.map((step) => ({ ...step, after: step.after + 1300 }));
        const facts = [...begun(one), ...entered(before, called(one)), ...entered(later, called(one), 60)];
        const back = [...begun(one), ...entered(before, called(one)), corrected(50, 1201, called(one), called(other)), ...entered(later, called(other), 60), undo(90, 50, 2600)];
        expect(look(back)).toEqual(look(facts));
        expect(plan(back)).toEqual(plan(facts));
      }),
      RUNS,
    );
  }, PATIENCE);

  it('twice, and both taken back in either order, stands as before; in between each is what the other left', () => {
    fc.assert(
      fc.property(names, steps(told, 8), fc.boolean(), ([a = '', b = '', c = ''], before, firstFirst) => {
        const facts = [...begun(a), ...entered(before, called(a))];
        const both = [...facts, corrected(50, 1201, called(a), called(b)), corrected(51, 1202, called(b), called(c))];
        expect(course(both)).toEqual(course([...begun(c), ...entered(before, called(c))]));
        const [first, second] = firstFirst ? [50, 51] : [51, 50];
        const half = [...both, undo(60, first, 1203)];
        const left = firstFirst ? c : b;
        expect(course(half)).toEqual(course([...begun(left), ...entered(before, called(left))]));
        const none = [...half, undo(61, second, 1204)];
        expect(look(none)).toEqual(look(facts));
        expect(plan(none)).toEqual(plan(facts));
      }),
      RUNS,
    );
  }, PATIENCE);

  it('back to the first card, as a new run, is the first course again', () => {
    fc.assert(
      fc.property(names, steps(told, 8), ([a = '', b = ''], before) => {
        const facts = [...begun(a), ...entered(before, called(a))];
        const round = [...facts, corrected(50, 1201, called(a), called(b)), corrected(51, 1202, called(b), called(a, 2))];
        expect(course(round)).toEqual(course(facts));
        expect(look(round).map(({ cure }) => cure.ref)).toEqual([called(a, 2)]);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('stands as before when any entry of its whole story is taken back', () => {
    fc.assert(
      fc.property(names, steps(toldOrDecided, 8), toldOrDecided, fc.integer({ min: 1, max: 1400 }), ([one = '', other = ''], before, more, after) => {
        const facts = [...begun(one), ...entered(before, called(one)), corrected(50, 1201, called(one), called(other))];
        const fact = more(called(other));
        const back: FactRecord[] = [...facts, record(70, after + 0.5, fact), { ...undo(71, 70, 1500), job: fact.type === 'air' ? null : JOB }];
        expect(look(back)).toEqual(look(facts));
        expect(plan(back)).toEqual(plan(facts));
      }),
      RUNS,
    );
  }, PATIENCE);
});

describe('damp metal', () => {
  const damp = fc.record({ air: fc.integer({ min: 5, max: 30 }), humidity: fc.integer({ min: 30, max: 100 }), metal: fc.integer({ min: 0, max: 30 }), warmer: fc.integer({ min: 0, max: 20 }) });
  const story = ({ air, humidity, metal }: { readonly air: number; readonly humidity: number; readonly metal: number }): FactRecord[] => [
    record(9, -30, { type: 'air', value: celsius(air), typed, humidity }),
    ...begun('P1'),
    record(2, 5, { type: 'reading', joint: FIRST_JOINT, value: celsius(metal), typed, method: 'tape' }),
  ];
  const held = (facts: readonly FactRecord[]) => look(facts).map(({ dew }) => dew?.heldSince ?? null)[0] ?? null;

  it('is held until somebody decides or the reading is taken back; a warmer reading lifts nothing', () => {
    fc.assert(
      fc.property(damp, (one) => {
        const facts = story(one);
        const warmer = record(3, 8, { type: 'reading', joint: FIRST_JOINT, value: celsius(one.metal + one.warmer), typed, method: 'tape' });
        expect(held([...facts, warmer])).toEqual(held(facts));
        expect(held([...facts, record(4, 6, { type: 'released', cure: called('P1'), reason: 'judged' }), warmer])).toBeNull();
        expect(held([...facts, undo(5, 2, 7)])).toBeNull();
      }),
      RUNS,
    );
  }, PATIENCE);

  it('is asked of the foreman once, and holds every milestone after closing', () => {
    fc.assert(
      fc.property(damp, (one) => {
        const facts = [...story(one), record(6, 20, { type: 'closed', cure: called('P1') })];
        const decisions = plan(facts).filter((reminder) => reminder.kind === 'decision');
        expect(decisions).toHaveLength(held(facts) === null ? 0 : 1);
        const said = decisions.map(({ kind, round, step, dueAt, to, cure }, index) => record(80 + index, 21, { type: 'reminder-raised', cure, kind, round, step, dueAt, to }));
        expect(plan([...facts, ...said]).filter((reminder) => reminder.kind === 'decision')).toEqual([]);
        if (held(facts) !== null) expect(plan(facts, instant(START + 30 * 3_600_000)).map((reminder) => reminder.kind)).toEqual(['decision']);
      }),
      RUNS,
    );
  }, PATIENCE);
});
