import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { milestoneShare } from '../../src/cure/forecast.js';
import { celsius, instant, minutes, plus, type Instant } from '../../src/cure/units.js';
import type { Fact, FactRecord } from '../../src/repair/facts.js';
import { FIRST_JOINT, personId } from '../../src/repair/ids.js';
import { exampleShop, weekdays } from '../support/example-shop.js';
import { on } from '../support/joint.js';
import { airFact, heatFact, outlooks, readingFact, record } from '../support/random-book.js';
import { anyCard } from '../support/random-card.js';

const RUNS = { numRuns: 10_000 };
/** Ten thousand weekends take a while where many share a processor. */
const PATIENCE = 120_000;

/**
 * Sundays on which clocks change, by the tz database: forward and back, by an hour and by half an hour, at midnight as well.
 */
const CHANGES = [
  ['Europe/Berlin', '2026-03-29'],
  ['Europe/Berlin', '2026-10-25'],
  ['America/New_York', '2026-03-08'],
  ['America/New_York', '2026-11-01'],
  ['Australia/Lord_Howe', '2026-04-05'],
  ['Australia/Lord_Howe', '2026-10-04'],
  ['America/Havana', '2026-03-08'],
  ['America/Havana', '2026-11-01'],
] as const;

/** Saturday 12:00 of that weekend, and by how many minutes its clocks change. */
const CHANGING = CHANGES.map(([zone, sunday]) => {
  const after = DateTime.fromISO(`${sunday}T12:00`, { zone });
  const noon = after.minus({ days: 1 });
  return { zone, noon: instant(noon.toMillis()), by: after.offset - noon.offset };
});
/** A Saturday where clocks never change. */
const STEADY = { zone: 'UTC', noon: on('Sat 12:00') };

/** From Saturday 12:00 to Sunday 22:00 at the earliest; the shop is closed from Friday evening to Monday morning. */
const WINDOW = 33 * 60;
const CURE = { joint: FIRST_JOINT, card: 'any', run: 1 };

const told = fc.tuple(fc.integer({ min: 1, max: WINDOW }), fc.oneof<fc.Arbitrary<Fact>[]>(heatFact, readingFact, airFact));
const weekend = fc.record({
  card: anyCard,
  night: fc.constantFrom(celsius(12), celsius(20), celsius(28)),
  closedDays: fc.constantFrom(null, celsius(16)),
  closed: fc.integer({ min: 0, max: 12 * 60 }),
  depth: fc.integer({ min: 1, max: 5 }),
  events: fc.uniqueArray(told, { maxLength: 6, selector: ([at]) => at }),
});
type Weekend = typeof weekend extends fc.Arbitrary<infer Value> ? Value : never;

/** The same weekend from some Saturday noon on, minute by real minute. */
function sharesFrom({ zone, noon }: { readonly zone: string; readonly noon: Instant }, { card, night, closedDays, closed, depth, events }: Weekend): number[][] {
  const at = (minute: number): Instant => plus(noon, minutes(minute));
  const shop = exampleShop({ zone, night, closedDays, hours: weekdays('07:30', '17:00') });
  const named = { ...CURE, card: card.name };
  const begun: FactRecord[] = [record(1, at(closed), { type: 'cure-opened', cure: named, card, owner: personId('tomek') }), record(1, at(closed), { type: 'closed', cure: named }), record(1, at(closed), { type: 'depth', cure: named, millimetres: depth })];
  const rest = events.map(([minute, fact], index) => record(index + 2, at(minute), fact));
  const [outlook] = outlooks({ shop }, [...begun, ...rest]);
  return (outlook?.milestones ?? []).map(({ forecast }) => Array.from({ length: 12 }, (_, index) => milestoneShare(forecast, at((WINDOW * (index + 1)) / 12))));
}

describe('a change of the clocks', () => {
  it('happens in every one of these weekends', () => {
    expect(CHANGING.map(({ by }) => by)).toEqual([60, -60, 60, -60, -30, 30, 60, -60]);
  });

  it('leaves the share that is done after so many real minutes as where clocks never change', () => {
    fc.assert(
      fc.property(weekend, fc.constantFrom(...CHANGING), (one, changing) => {
        expect(sharesFrom(changing, one)).toEqual(sharesFrom(STEADY, one));
      }),
      RUNS,
    );
  }, PATIENCE);
});
