import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MaterialCard, MilestoneRule } from '../../src/cure/card.js';
import { celsius, instant, minutes, plus, type Instant } from '../../src/cure/units.js';
import { airReadings, outlooksOf } from '../../src/repair/book.js';
import type { Fact, FactRecord } from '../../src/repair/facts.js';
import { entryNo, FIRST_JOINT, jobNo, personId } from '../../src/repair/ids.js';
import { foldJob } from '../../src/repair/job.js';
import { composeWhy } from '../../src/reply/compose/why.js';
import { toText } from '../../src/reply/to-text.js';
import { CARDS } from '../support/card-shelf.js';
import { exampleShop } from '../support/example-shop.js';
import { on } from '../support/joint.js';
import { printedDue, printedShares, printedTotal, redoneDue } from '../support/printed-sum.js';

const SHOP = exampleShop({ zone: 'UTC' });
const JOB = jobNo('501');
const DAY_SECONDS = 24 * 3600;
const RUNS = 2000;
const PATIENCE = 180_000;

/** One milestone of a card, so that the answer is about it. */
interface Asked {
  readonly card: MaterialCard;
  readonly rule: MilestoneRule;
}

const LAWS = ['credit', 'recipe', 'depth-root', 'table', 'above', 'dwell', 'elapsed'] as const;
const milestonesBy = (law: (typeof LAWS)[number]): Asked[] => CARDS.flatMap((card) => card.milestones.filter((rule) => rule.laws.some((one) => one.law === law)).map((rule) => ({ card, rule })));

/** Each law as often as any other. */
const asked: fc.Arbitrary<Asked> = fc
  .record({ pick: fc.constantFrom(...LAWS).chain((law) => fc.constantFrom(...milestonesBy(law))), marginPercent: fc.constantFrom(0, 0, 25, 12.5) })
  .map(({ pick: { card, rule }, marginPercent }) => ({ rule, card: { ...card, marginPercent, milestones: [rule] } }));

/** Whole seconds, half minutes, whole minutes and any millisecond after a moment. */
const soonAfter = (from: Instant, hours: number): fc.Arbitrary<Instant> =>
  fc
    .oneof(
      fc.integer({ min: 0, max: hours * 60 }).map((minute) => minute * 60_000),
      fc.integer({ min: 0, max: hours * 120 }).map((half) => half * 30_000),
      { weight: 3, arbitrary: fc.integer({ min: 0, max: hours * 3600 }).map((second) => second * 1000) },
      fc.integer({ min: 0, max: hours * 3_600_000 }),
    )
    .map((milliseconds) => instant(from + milliseconds));

const typed = { value: 0, unit: null };
const joint = FIRST_JOINT;
const fact: fc.Arbitrary<Fact> = fc.oneof<fc.Arbitrary<Fact>[]>(
  fc.oneof(fc.integer({ min: 100, max: 680 }), fc.integer({ min: 590, max: 660 })).map((tenths) => ({ type: 'reading', joint, value: celsius(tenths / 10), typed, method: 'tape' })),
  fc.integer({ min: 50, max: 300 }).map((tenths) => ({ type: 'air', value: celsius(tenths / 10), typed, humidity: 50 })),
  fc.record({ setting: fc.constantFrom(30, 35, 55, 60).map(celsius), heater: fc.constantFrom('lamp' as const, 'lamp' as const, 'pad' as const) }).map((set) => ({ type: 'lamp-set', joint, typed, lamp: null, ...set })),
  fc.constantFrom<Fact>({ type: 'lamp-on', joint }, { type: 'lamp-off', joint }, { type: 'lamp-found-off', joint }, { type: 'attended', joint }),
);

const record = (entry: number, happenedAt: Instant, told: Fact): FactRecord => ({ entry: entryNo(entry), job: told.type === 'air' ? null : JOB, happenedAt, enteredAt: happenedAt, by: personId('tomek'), fact: told });

const day = fc
  .record({ asked, start: fc.integer({ min: 0, max: 4 * DAY_SECONDS }).map((seconds) => plus(on('07:30'), minutes(seconds / 60))), depth: fc.integer({ min: 3, max: 30 }).map((tenths) => tenths / 10) })
  .chain(({ asked: { card, rule }, start, depth }) => {
    const cure = { joint, card: card.name, run: 1 };
    const begun = [record(1, start, { type: 'cure-opened', cure, card, owner: personId('tomek') }), record(1, start, { type: 'closed', cure }), record(1, start, { type: 'depth', cure, millimetres: depth }), record(1, start, { type: 'air', value: celsius(20), typed, humidity: 50 })];
    const later = fc.array(fc.tuple(soonAfter(start, 14), fact), { maxLength: 8 }).map((told) => [...begun, ...told.map(([at, one], index) => record(index + 2, at, one))]);
    return fc.record({ rule: fc.constant(rule), start: fc.constant(start), facts: later, now: soonAfter(start, 30) });
  });

const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const weekday = (at: Instant): string => WEEKDAYS[new Date(at).getUTCDay()] ?? '';

function whyText(facts: readonly FactRecord[], now: Instant): string {
  const own = facts.filter((one) => one.job !== null);
  const [outlook] = outlooksOf(foldJob(JOB, own), SHOP, airReadings(facts.filter((one) => one.job === null)));
  if (outlook === undefined) throw new Error('no cure');
  return toText(composeWhy(outlook, { shop: SHOP, now }));
}

describe('the printed sum of `why`', () => {
  it('comes to the printed minute when it is added up again from the text alone', () => {
    const summed = new Map<string, number>();
    fc.assert(
      fc.property(day, ({ rule, facts, now }) => {
        const text = whyText(facts, now);
        const today = weekday(now);
        const due = printedDue(text, today);
        if (due === null) return;
        const shares = printedShares(text, today);
        const { total, within } = printedTotal(shares);
        expect(Math.abs(total - 1), text).toBeLessThanOrEqual(within);
        expect(Math.abs(shares.reduce((sum, share) => sum + share.percent, 0) - 100), text).toBeLessThanOrEqual(0.05 * shares.length + 1e-9);
        expect(redoneDue(shares), text).toBe(due);
        for (const { law } of rule.laws) summed.set(law, (summed.get(law) ?? 0) + 1);
      }),
      { numRuns: RUNS },
    );
    // Every kind of law comes up often enough to mean something.
    for (const law of LAWS) expect(summed.get(law) ?? 0, law).toBeGreaterThan(RUNS / 50);
  }, PATIENCE);
});
