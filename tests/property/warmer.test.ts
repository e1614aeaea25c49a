import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MaterialCard } from '../../src/cure/card.js';
import { forecast } from '../../src/cure/forecast.js';
import type { HeatEvent, JointHistory } from '../../src/cure/history.js';
import { jointSteps } from '../../src/cure/joint-temperature.js';
import { vapourPressure } from '../../src/cure/dew-point.js';
import { celsius, type Celsius } from '../../src/cure/units.js';
import { anyCard } from '../support/random-card.js';
import { airOf, inOrder, lampBeliefs, momentAfter, randomPast } from '../support/random-history.js';

const RUNS = { numRuns: 10_000 };
/** Ten thousand histories take a while where many share a processor. */
const PATIENCE = 120_000;
const HOTTEST = 250;

const NEVER = Infinity;
/**
 * Recipes are left out: a lamp that is known to have been on for a minute has been interrupted, which costs 20 min (rule R5),
 * where one that was never seen on begins afresh.
 */
const dueOf = (card: MaterialCard, one: JointHistory): number[] => forecast(card, one).flatMap(({ dueAt, laws }) => (laws.some(({ law }) => law === 'recipe') ? [] : [dueAt ?? NEVER]));
const noneLater = (warmer: readonly number[], asItWas: readonly number[]): boolean => warmer.every((due, index) => due <= (asItWas[index] ?? 0));
const more = fc.integer({ min: 0, max: 200 }).map((tenths) => tenths / 10);

const hottestOf = (values: readonly (Celsius | null)[]): number => values.reduce<number>((hottest, value) => Math.max(hottest, value ?? -HOTTEST), -40);
/** Whether an added event leaves every belief about the lamp as it was, also the one of its own moment. */
function leavesBelief(heat: readonly HeatEvent[], added: HeatEvent): boolean {
  const [before, after] = [heat.filter((event) => event.at < added.at), heat.filter((event) => event.at > added.at)];
  const asItWas = lampBeliefs(heat);
  const own = asItWas[before.length - 1] ?? 'never';
  return lampBeliefs([...before, added, ...after]).join() === [...asItWas.slice(0, before.length), own, ...asItWas.slice(before.length)].join();
}

describe('to learn that it was warm never makes a strength milestone later', () => {
  /**
   * "Warm" is: at least as warm as everything that counts without the reading until the next reading (air that gets warmer
   * later would count for more than a reading from before). No reading is over the maximum, which counts nothing. It must not
   * change what is believed about the lamp: a warmer reading makes a later one look like stored heat.
   */
  it('from one more reading', () => {
    fc.assert(
      fc.property(anyCard, randomPast.chain((past) => fc.tuple(fc.constant(past), momentAfter(past.history.start))), more, (card, [{ history }, at], degrees) => {
        if (history.heat.some((event) => event.at === at)) return;
        const next = history.heat.find((event) => event.kind === 'reading' && event.at > at)?.at ?? NEVER;
        const counted = [...jointSteps(history, card.maxPanel), ...jointSteps(history, card.maxPanel, 'previous')].filter((step) => step.from < next);
        const value = celsius(hottestOf(counted.map((step) => step.temperature)) + degrees);
        const added: HeatEvent = { kind: 'reading', at, value };
        const heat = inOrder([...history.heat, added]);
        if (hottestOf(heat.map((event) => (event.kind === 'reading' ? event.value : null))) > (card.maxPanel ?? HOTTEST) || !leavesBelief(history.heat, added)) return;
        expect(noneLater(dueOf(card, { ...history, heat }), dueOf(card, history))).toBe(true);
      }),
      RUNS,
    );
  }, PATIENCE);

  /**
   * Whoever finds a lamp off and then learns that it was on all along. Readings after it must be at least as warm as those
   * before: a colder one would cap everything back to the one before, where "found off" gives the drop another reason.
   */
  it('from hearing that a lamp that was found off was on all along', () => {
    fc.assert(
      fc.property(anyCard, randomPast, fc.nat(), (card, { history }, pick) => {
        const doubts = history.heat.filter((event) => event.kind === 'lamp-found-off');
        const doubt = doubts[pick % Math.max(1, doubts.length)];
        if (doubt === undefined) return;
        const readings = history.heat.filter((event) => event.kind === 'reading');
        const before = hottestOf([...readings.filter((event) => event.at < doubt.at).map((event) => event.value), ...history.air.map((step) => step.temperature)]);
        const heat = history.heat.map((event): HeatEvent => (event === doubt ? { kind: 'lamp-on', at: doubt.at } : event));
        if (readings.some((event) => (event.at > doubt.at && event.value < before) || event.value > (card.maxPanel ?? HOTTEST))) return;
        expect(noneLater(dueOf(card, { ...history, heat }), dueOf(card, history))).toBe(true);
      }),
      RUNS,
    );
  }, PATIENCE);

  /**
   * One more reading of the air, with no less water than any other, and at least as warm as any air that counts from then on. So
   * must be the readings before it: after three hours the colder of the last two counts. Not so for tables: the same water is
   * fewer percent of warmer air, and a table asks for percent.
   */
  it('from air that was read warmer than it was taken to be', () => {
    fc.assert(
      fc.property(anyCard, randomPast.chain((past) => fc.tuple(fc.constant(past), momentAfter(past.history.start))), more, (card, [{ history, given }, at], degrees) => {
        if (card.basis === 'table' || given.readings.some((one) => one.at === at)) return;
        const counted = history.air.filter((_, index) => (history.air[index + 1]?.from ?? NEVER) > at);
        const hottest = hottestOf(counted.map((step) => step.temperature));
        if (given.readings.some((one) => one.at < at && one.value < hottest)) return;
        const value = celsius(hottest + degrees);
        if (given.readings.some((one) => vapourPressure(one.value, one.humidity ?? 0) > vapourPressure(value, 100))) return;
        const air = airOf(history.start, { ...given, readings: [...given.readings, { at, value, humidity: 100 }] });
        expect(noneLater(dueOf(card, { ...history, air }), dueOf(card, history))).toBe(true);
      }),
      RUNS,
    );
  }, PATIENCE);
});
