import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AirReading } from '../../src/cure/air.js';
import type { MaterialCard, RateLaw, RecipeStage } from '../../src/cure/card.js';
import type { HeatEvent } from '../../src/cure/history.js';
import { celsius, instant, minus, minutes, plus, type Instant } from '../../src/cure/units.js';
import { FIRST_JOINT, jobNo, personId } from '../../src/repair/ids.js';
import { lookAt } from '../../src/repair/outlook.js';
import { NOTHING_SAID } from '../../src/repair/people-facts.js';
import { plannedCure, type Planned } from '../../src/repair/planned-cure.js';
import { latestStart } from '../../src/repair/latest-start.js';
import { latestIf, type Aim, type Way } from '../../src/repair/readiness.js';
import type { Shop } from '../../src/repair/shop.js';
import { dayEnd, isOpen, nextOpening } from '../../src/repair/shop-hours.js';
import { cardNamed } from '../support/card-shelf.js';
import { exampleShop, weekdays } from '../support/example-shop.js';
import { on, rows } from '../support/joint.js';
import { latestStartCommand } from '../support/questions.js';

// The answer is compared with trying every single minute, in shops with short days and on cards with short waits.

const RUNS = { numRuns: 1000 };
const PATIENCE = 300_000;
const MINUTE = 60_000;
/** So far back everything is tried. */
const TRIED = minutes(2 * 24 * 60);

const clockOf = (minuteOfDay: number): string => `${Math.floor(minuteOfDay / 60)}:${String(minuteOfDay % 60).padStart(2, '0')}`;

const anyShop: fc.Arbitrary<Shop> = fc.record({ length: fc.integer({ min: 25, max: 110 }), air: fc.constantFrom(16, 20, 27), night: fc.constantFrom(12, 18, null), longNights: fc.boolean() }).map(({ length, air, night, longNights }) => {
  const hours = longNights ? weekdays('8:00', clockOf(480 + length)) : shortNights(length);
  return exampleShop({ hours, air: celsius(air), night: night === null ? null : celsius(night), holidays: ['2026-03-04'] });
});

/** A shop that closes for a short while only: its nights are shorter than half of many a stage. */
const shortNights = (length: number): Shop['hours'] => weekdays(clockOf(Math.floor(length / 2)), clockOf(1439 - Math.ceil(length / 2)));

const anyReadings: fc.Arbitrary<readonly AirReading[]> = fc
  .array(fc.record({ after: fc.integer({ min: 0, max: 4 * 24 * 60 }), value: fc.integer({ min: 10, max: 32 }), humidity: fc.constantFrom(null, 30, 50) }), { maxLength: 3 })
  .map((list) => list.map(({ after, value, humidity }) => ({ at: plus(on('Mon 07:30'), minutes(after)), value: celsius(value), humidity })).sort((one, other) => one.at - other.at));

const anyStages: fc.Arbitrary<readonly RecipeStage[]> = fc
  .oneof(...[70, 400].map((most) => fc.array(fc.integer({ min: 5, max: most }), { minLength: 1, maxLength: 3 })))
  .map((lengths) => lengths.map((length, index) => ({ lamp: celsius(35 + 10 * index), minutes: minutes(length), reaches: index === lengths.length - 1 ? 'full' : null })));

const creditLaw = fc.tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 80 })).map(([hot, more, most]): RateLaw => ({ law: 'credit', rows: rows({ 15: hot + more + most, 20: hot + more, 40: hot }) }));

const airLaw = fc.oneof<fc.Arbitrary<RateLaw>[]>(
  fc.tuple(fc.integer({ min: 5, max: 50 }), fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 90 })).map(([best, more, most]) => ({
    law: 'table',
    rows: [
      { atLeast: celsius(20), humidity: 45, minutes: minutes(best) },
      { atLeast: celsius(15), humidity: 20, minutes: minutes(best + more) },
      { atLeast: celsius(10), humidity: 0, minutes: minutes(best + more + most) },
    ],
  })),
  fc.integer({ min: 1, max: 120 }).map((wait) => ({ law: 'elapsed', minutes: minutes(wait) })),
  fc.integer({ min: 1, max: 120 }).map((wait) => ({ law: 'above', temperature: celsius(17), minutes: minutes(wait) })),
  creditLaw,
);

const cardOf = (...laws: readonly RateLaw[]): MaterialCard => ({ ...cardNamed('P1'), openTime: null, milestones: [{ kind: 'full', laws }] });

const lastMinutes = fc.integer({ min: 0, max: 4 * 24 * 60 }).map((after) => plus(on('Tue 06:00'), minutes(after)));

const aimAt = (card: MaterialCard, shop: Shop, air: readonly AirReading[]): Aim => {
  const planned: Planned = { job: jobNo('501'), joint: FIRST_JOINT, card, by: personId('tomek'), depthMillimetres: null };
  return { planned, milestone: 'full', shop, air, now: on('Mon 06:00') };
};

function openings(shop: Shop, after: Instant, until: Instant): Instant[] {
  const next = nextOpening(shop, instant(after + 1));
  return next === null || next > until ? [] : [next, ...openings(shop, next, until)];
}

/** A reading counts only while the shop of that moment is open still. */
const readIn = (shop: Shop, lit: Instant, setting: number): HeatEvent[] => {
  const at = plus(lit, shop.rhythm.readingDue);
  return isOpen(shop, at) && at < dayEnd(shop, lit) ? [{ kind: 'reading', at, value: celsius(setting) }] : [];
};

function lampEvents(shop: Shop, start: Instant, until: Instant, setting: number): HeatEvent[] {
  const mornings = openings(shop, start, until).flatMap((at): HeatEvent[] => [{ kind: 'lamp-on', at }, ...readIn(shop, at, setting)]);
  return [{ kind: 'lamp-set', at: start, setting: celsius(setting), heater: 'lamp' }, ...readIn(shop, start, setting), ...mornings];
}

/** Stage by stage: what the ordinary look says of the stages so far tells when the next one is lit. */
function recipeEvents({ planned, shop, air }: Aim, start: Instant, until: Instant, stages: readonly RecipeStage[]): HeatEvent[] {
  let events: HeatEvent[] = openings(shop, start, until).map((at) => ({ kind: 'lamp-on', at }));
  let lit: Instant | null = start;
  for (const [index, stage] of stages.entries()) {
    if (lit === null) break;
    events = [...events, { kind: 'lamp-set', at: lit, setting: stage.lamp, heater: 'lamp' } as const].sort((one, other) => one.at - other.at);
    const ended = lookAt(plannedCure(planned, start, events), shop, air).stages[index]?.ended ?? null;
    const checked = ended === null ? null : plus(ended, shop.rhythm.stageDue);
    const opens = checked === null ? null : nextOpening(shop, checked);
    lit = checked === null ? null : isOpen(shop, checked) ? checked : opens === null ? null : plus(opens, shop.rhythm.stageDue);
  }
  return events;
}

/** The last minute, of all that the shop is open, from which it is due in time. */
function byTrying(way: Way, aim: Aim, readyBy: Instant): Instant | null {
  const { planned, shop, air } = aim;
  for (let start = Math.floor(readyBy / MINUTE) * MINUTE; start >= readyBy - TRIED * MINUTE; start -= MINUTE) {
    const at = instant(start);
    if (!isOpen(shop, at)) continue;
    const { heat } = way;
    const events = heat.kind === 'air' ? [] : heat.kind === 'heater' ? lampEvents(shop, at, readyBy, heat.setting) : recipeEvents(aim, at, readyBy, heat.stages);
    const due = lookAt(plannedCure(planned, at, events), shop, air).milestones[0]?.forecast.dueAt ?? null;
    if (due !== null && due <= readyBy) return at;
  }
  return null;
}

const expectSame = (way: Way, aim: Aim, readyBy: Instant): void => {
  // Days are whole in the search, so it begins with the first day that is tried completely.
  const earliest = minus(readyBy, TRIED);
  const found = latestIf(way, aim, earliest, readyBy);
  const tried = byTrying(way, aim, readyBy);
  expect([found === null || found < dayEnd(aim.shop, earliest) ? null : found, way.heat.kind]).toEqual([tried === null || tried < dayEnd(aim.shop, earliest) ? null : tried, way.heat.kind]);
};

describe('the latest start is the last minute of all', () => {
  it('in the air', () => {
    fc.assert(fc.property(airLaw, anyShop, anyReadings, lastMinutes, (law, shop, air, readyBy) => { expectSame({ heat: { kind: 'air' }, eachMorning: null }, aimAt(cardOf(law), shop, air), readyBy); }), RUNS);
  }, PATIENCE);

  it('under a lamp that is read', () => {
    fc.assert(
      fc.property(creditLaw, anyShop, anyReadings, lastMinutes, fc.constantFrom(22, 33, 40, 60), (law, shop, air, readyBy, setting) => {
        expectSame({ heat: { kind: 'heater', heater: 'lamp', setting: celsius(setting) }, eachMorning: null }, aimAt(cardOf(law), shop, air), readyBy);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('of a recipe', () => {
    fc.assert(
      fc.property(anyStages, anyShop, lastMinutes, (stages, shop, readyBy) => {
        expectSame({ heat: { kind: 'recipe', stages }, eachMorning: null }, aimAt({ ...cardOf({ law: 'recipe', stages }), basis: 'lamp-set' }, shop, []), readyBy);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('of a recipe on a card that has a time without heat as well, where heat is named at all', () => {
    fc.assert(
      fc.property(anyStages, creditLaw, anyShop, lastMinutes, (stages, law, shop, readyBy) => {
        const card: MaterialCard = { ...cardOf({ law: 'recipe', stages }, law), basis: 'lamp-set' };
        const aim = aimAt(card, shop, []);
        const result = latestStart(latestStartCommand({ card: card.name, readyBy }), { ...aim, by: aim.planned.by, cards: [card], procedures: [], book: { job: () => null, openJobs: () => [], air: [], people: NOTHING_SAID }, thread: null, lastEntry: () => null, entry: () => [] });
        const [air, heated] = result.ok ? result.plan.choices : expect.fail('refused');
        const tried = byTrying({ heat: { kind: 'recipe', stages }, eachMorning: null }, aim, readyBy);
        const within = (at: Instant | null | undefined): Instant | null => (at == null || at < dayEnd(shop, minus(readyBy, TRIED)) ? null : at);
        expect(within(heated?.latest ?? (air?.eachMorning === null ? air.latest : null))).toBe(within(tried));
      }),
      RUNS,
    );
  }, PATIENCE);
});
