import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MaterialCard, RecipeStage } from '../../src/cure/card.js';
import { forecast } from '../../src/cure/forecast.js';
import type { HeatEvent, JointHistory } from '../../src/cure/history.js';
import { celsius, minutes, plus, type Instant } from '../../src/cure/units.js';
import { cardNamed } from '../support/card-shelf.js';
import { randomHistory } from '../support/random-history.js';
import { on, steadyAir } from '../support/joint.js';

const RUNS = { numRuns: 10_000 };
/** Ten thousand histories take a while where many share a processor. */
const PATIENCE = 120_000;
const NEVER = Infinity;
const MINUTE = 60_000;
/** Rule R5: after an interruption the joint has to warm up again. */
const REWARM = 20;

const SETTINGS = [30, 35, 55, 60];
const stages: fc.Arbitrary<RecipeStage[]> = fc
  .tuple(fc.subarray(SETTINGS, { minLength: 1, maxLength: 3 }), fc.array(fc.integer({ min: 10, max: 200 }), { minLength: 3, maxLength: 3 }))
  .map(([settings, lengths]) => settings.map((lamp, index) => ({ lamp: celsius(lamp), minutes: minutes(lengths[index] ?? 10), reaches: null })));
const recipeCard = (list: readonly RecipeStage[]): MaterialCard => ({ ...cardNamed('P2'), milestones: [{ kind: 'full', laws: [{ law: 'recipe', stages: list }] }] });
const dueOf = (list: readonly RecipeStage[], history: JointHistory): number => forecast(recipeCard(list), history)[0]?.dueAt ?? NEVER;

/** The lamp alone: stage after stage from the first moment at which it can have been set for it, as if never lost. */
function atTheEarliest(list: readonly RecipeStage[], { start, heat }: JointHistory): number {
  return list.reduce<number>((from, stage) => {
    const set = heat.find((event) => event.kind === 'lamp-set' && event.heater === 'lamp' && event.setting >= stage.lamp);
    return Math.max(from, set?.at ?? NEVER) + stage.minutes * MINUTE;
  }, start);
}

describe('a recipe (rule R5)', () => {
  it('never ends before the printed minutes from switch-on, stage by stage', () => {
    fc.assert(
      fc.property(stages, randomHistory, (list, history) => {
        expect(dueOf(list, history)).toBeGreaterThanOrEqual(atTheEarliest(list, history));
      }),
      RUNS,
    );
  }, PATIENCE);

  it('is never later for heat that came before, however often the lamp was lost', () => {
    const turns = fc.array(fc.record({ on: fc.integer({ min: 1, max: 60 }), off: fc.integer({ min: 1, max: 40 }) }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(stages, turns, fc.integer({ min: 1, max: 200 }), (list, lost, after) => {
        const heat: HeatEvent[] = [];
        let at = on('09:00');
        for (const turn of lost) {
          heat.push({ kind: 'lamp-set', at, setting: celsius(60), heater: 'lamp' }, { kind: 'lamp-off', at: plus(at, minutes(turn.on)) });
          at = plus(at, minutes(turn.on + turn.off));
        }
        heat.push({ kind: 'lamp-set', at, setting: celsius(60), heater: 'lamp' });
        const history: JointHistory = { start: on('09:00'), heat, depthMillimetres: null, air: [] };
        expect(dueOf(list, { ...history, start: plus(history.start, minutes(after)) })).toBeGreaterThanOrEqual(dueOf(list, history));
        expect(dueOf(list, history)).toBeLessThanOrEqual(dueOf(list, { ...history, heat: heat.slice(-1) }));
      }),
      RUNS,
    );
  }, PATIENCE);

  it('has no time while only a pad was set', () => {
    fc.assert(
      fc.property(stages, randomHistory, (list, history) => {
        const heat = history.heat.map((event): HeatEvent => (event.kind === 'lamp-set' ? { ...event, heater: 'pad' } : event));
        expect(dueOf(list, { ...history, heat })).toBe(NEVER);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('is never advanced by a pad that is set last, nor by one in place of the last lamp', () => {
    fc.assert(
      fc.property(stages, randomHistory, fc.integer({ min: 0, max: 900 }), (list, history, after) => {
        const last = history.heat.at(-1)?.at ?? history.start;
        const added: HeatEvent = { kind: 'lamp-set', at: plus(last, minutes(after)), setting: celsius(60), heater: 'pad' };
        expect(dueOf(list, { ...history, heat: [...history.heat, added] })).toBeGreaterThanOrEqual(dueOf(list, history));
        const set = history.heat.findLast((event) => event.kind === 'lamp-set');
        const heat = history.heat.map((event): HeatEvent => (event === set ? { ...set, heater: 'pad' } : event));
        expect(dueOf(list, { ...history, heat })).toBeGreaterThanOrEqual(dueOf(list, history));
      }),
      RUNS,
    );
  }, PATIENCE);
});

/** Off from one minute to another, counted from switch-on. */
interface Loss {
  readonly from: number;
  readonly to: number;
}

const START = on('08:00');
const losses: fc.Arbitrary<Loss[]> = fc.array(fc.tuple(fc.integer({ min: 1, max: 150 }), fc.integer({ min: 1, max: 120 })), { maxLength: 5 }).map((list) => {
  let at = 0;
  return list.map(([runs, off]) => {
    const from = at + runs;
    at = from + off;
    return { from, to: at };
  });
});

function lampWith(list: readonly Loss[], how: 'lamp-off' | 'pad'): JointHistory {
  const at = (minute: number): Instant => plus(START, minutes(minute));
  const set = (minute: number, heater: 'lamp' | 'pad'): HeatEvent => ({ kind: 'lamp-set', at: at(minute), setting: celsius(60), heater });
  const lost = list.flatMap(({ from, to }): HeatEvent[] => (how === 'pad' ? [set(from, 'pad'), set(to, 'lamp')] : [{ kind: 'lamp-off', at: at(from) }, { kind: 'lamp-on', at: at(to) }]));
  return { start: START, depthMillimetres: null, air: steadyAir(START, 20), heat: [set(0, 'lamp'), ...lost] };
}

/**
 * Minute by which a stage ends: what is missing is added with 20 min for each interruption, or the stage is done anew from
 * a later switch-on, whichever ends first; after more than half a stage missing only the latter. Off as it would begin, it
 * begins when the lamp is back.
 */
function stageEnd(length: number, from: number, list: readonly Loss[]): number {
  const begins = list.find((loss) => loss.from <= from && loss.to > from)?.to ?? from;
  let [due, missing, anew] = [begins + length, 0, NEVER];
  for (const loss of list) {
    const off = loss.to - loss.from;
    if (loss.to <= begins || loss.from >= due) continue;
    anew = Math.min(anew, stageEnd(length, loss.to, list));
    missing += off;
    if (missing > length / 2) return anew;
    due += off + REWARM;
  }
  return Math.min(due, anew);
}

describe('an interruption of a recipe', () => {
  const how = fc.constantFrom('lamp-off' as const, 'pad' as const);
  const minuteOf = (list: readonly RecipeStage[], history: JointHistory): number => (dueOf(list, history) - START) / MINUTE;

  it('costs its length and 20 min, or the stage anew where that ends first or more than half of it is missing', () => {
    fc.assert(
      fc.property(stages, losses, how, (list, lost, lostBy) => {
        const expected = list.reduce((from, stage) => stageEnd(stage.minutes, from, lost), 0);
        expect(minuteOf(list, lampWith(lost, lostBy))).toBe(expected);
      }),
      RUNS,
    );
  }, PATIENCE);

  it('of one stage costs at least its length and 20 min, or leaves the printed minutes from the last switch-on', () => {
    fc.assert(
      fc.property(stages, losses, how, ([stage], lost, lostBy) => {
        const last = lost.at(-1);
        if (last === undefined || stage === undefined) return;
        const [before, after] = [lost.slice(0, -1), lost].map((list) => minuteOf([stage], lampWith(list, lostBy)));
        if (before === undefined || last.from >= before) {
          expect(after).toBe(before);
          return;
        }
        const length = last.to - last.from;
        expect(after).toBeGreaterThanOrEqual(Math.min(before + length + REWARM, last.to + stage.minutes));
        if (lost.length === 1) expect(after).toBe(length > stage.minutes / 2 ? last.to + stage.minutes : before + length + Math.min(REWARM, last.from));
      }),
      RUNS,
    );
  }, PATIENCE);
});
