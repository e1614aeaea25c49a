import type { OpenPeriod } from '../cure/air.js';
import type { RecipeStage } from '../cure/card.js';
import type { HeatEvent, LampStretch } from '../cure/history.js';
import { runRecipe } from '../cure/recipe.js';
import { minutesBetween, plus, type Celsius, type Instant, type Minutes } from '../cure/units.js';

/** A lamp turned to a setting at a moment. */
interface Turn {
  readonly at: Instant;
  readonly setting: Celsius;
}

/** Heat from `start` on as a shop would give it: off at closing, on again at the next opening, since no lamp runs alone. */
export interface HeatPlan {
  readonly start: Instant;
  /** Opening periods from that of `start` on. */
  readonly periods: readonly OpenPeriod[];
}

/** One setting, each time read so many minutes after it was switched on, if the shop is still open then. */
export function heaterEvents({ start, periods }: HeatPlan, setting: Celsius, readingDue: Minutes): HeatEvent[] {
  return periods.flatMap(({ opens, closes }): HeatEvent[] => {
    const first = opens <= start;
    const at = first ? start : opens;
    const readAt = plus(at, readingDue);
    const on: HeatEvent = first ? { kind: 'lamp-set', at, setting, heater: 'lamp' } : { kind: 'lamp-on', at };
    return readAt < closes ? [on, { kind: 'reading', at: readAt, value: setting }] : [on];
  });
}

/** A recipe whose next stage begins when the one before is over and somebody has looked at it. */
export function recipeEvents(plan: HeatPlan, stages: readonly RecipeStage[], wait: Minutes): HeatEvent[] {
  const turns = recipeTurns(plan, stages, wait).turns.map(({ at, setting }): HeatEvent => ({ kind: 'lamp-set', at, setting, heater: 'lamp' }));
  const mornings = plan.periods.filter(({ opens }) => opens > plan.start).map(({ opens }): HeatEvent => ({ kind: 'lamp-on', at: opens }));
  return [...turns, ...mornings].sort((one, other) => one.at - other.at);
}

/** When such a recipe ends; null: not within these opening periods. */
export const recipeEnd = (plan: HeatPlan, stages: readonly RecipeStage[], wait: Minutes): Instant | null => recipeTurns(plan, stages, wait).end;

/** Whether each stage fits into some day, or into a night that does not make it begin again (rule R5: more than half missing). */
export const canEnd = (stages: readonly RecipeStage[], periods: readonly OpenPeriod[]): boolean =>
  stages.every((stage) =>
    periods.some(({ opens, closes }, index) => {
      const next = periods[index + 1];
      return minutesBetween(opens, closes) >= stage.minutes || (next !== undefined && minutesBetween(closes, next.opens) <= stage.minutes / 2);
    }),
  );

function recipeTurns(plan: HeatPlan, stages: readonly RecipeStage[], wait: Minutes): { readonly turns: readonly Turn[]; readonly end: Instant | null } {
  const turns: Turn[] = [];
  let next: Instant | null = plan.start;
  let end: Instant | null = null;
  for (const [index, stage] of stages.entries()) {
    if (next === null) return { turns, end: null };
    turns.push({ at: next, setting: stage.lamp });
    end = runRecipe(stages.slice(0, index + 1), stretchesOf(plan, turns), plan.start).at(-1)?.ended ?? null;
    next = end === null ? null : attended(plus(end, wait), plan, wait);
  }
  return { turns, end };
}

/** A check that would fall after closing is made so long after the next opening. */
function attended(at: Instant, { periods }: HeatPlan, wait: Minutes): Instant | null {
  const period = periods.find(({ closes }) => at < closes);
  return period === undefined ? null : period.opens <= at ? at : plus(period.opens, wait);
}

function stretchesOf({ start, periods }: HeatPlan, turns: readonly Turn[]): LampStretch[] {
  return periods.flatMap(({ opens, closes }) => {
    const begins = opens <= start ? start : opens;
    const before = turns.findLast(({ at }) => at <= begins);
    const within = turns.filter(({ at }) => at > begins && at < closes);
    const set = before === undefined ? within : [{ at: begins, setting: before.setting }, ...within];
    return set.map(({ at, setting }, index): LampStretch => ({ from: at, to: set[index + 1]?.at ?? closes, setting, heater: 'lamp' }));
  });
}
