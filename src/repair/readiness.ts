import type { AirReading, OpenPeriod } from '../cure/air.js';
import type { MilestoneKind, RecipeStage } from '../cure/card.js';
import type { HeatEvent } from '../cure/history.js';
import { minus, minutes, plus, type Celsius, type Instant, type Minutes } from '../cure/units.js';
import type { Heat } from './heat-choices.js';
import { latestByHalving, latestByTrying } from './latest-minute.js';
import { lookAt } from './outlook.js';
import { plannedCure, type Planned } from './planned-cure.js';
import { canEnd, heaterEvents, recipeEnd, recipeEvents, type HeatPlan } from './planned-heat.js';
import type { Shop } from './shop.js';
import { openPeriods } from './shop-hours.js';

/** What is to be ready, and where. */
export interface Aim {
  readonly planned: Planned;
  readonly milestone: MilestoneKind;
  readonly shop: Shop;
  readonly air: readonly AirReading[];
  readonly now: Instant;
}

/** One way of getting there. */
export interface Way {
  readonly heat: Heat;
  /** The air that is assumed to be read at every opening to come; null: none. */
  readonly eachMorning: Celsius | null;
}

/** An air reading counts at once, until an older one may overrule it, and is remembered so long (`cure/air.ts`). */
const READING_CHANGES: readonly Minutes[] = [minutes(0), minutes(180), minutes(24 * 60)];
/** So long before opening the working day's air begins (`cure/air.ts`), in a shop with short nights before the day before ends. */
const EARLY_BIRD = minutes(60);

/** Due time by the ordinary look at it, if the panel is closed at `start` and heat goes on until `until`. */
export const dueIf = (way: Way, aim: Aim, start: Instant, until: Instant): Instant | null => dueWithin(way, aim, planFrom(start, openPeriods(aim.shop, start, until)));

/** The latest start from `earliest` on that is due by `readyBy`; null: none. */
export function latestIf(way: Way, aim: Aim, earliest: Instant, readyBy: Instant): Instant | null {
  const periods = openPeriods(aim.shop, earliest, readyBy);
  const inTime = (start: Instant): boolean => isBy(dueWithin(way, aim, planFrom(start, periods)), readyBy);
  if (way.heat.kind !== 'recipe') return latestByHalving(periods, readyBy, cutsIn(periods, way.heat, aim), inTime);
  const { stages } = way.heat;
  if (!canEnd(stages, periods)) return null;
  // The recipe alone is quick to run; where it does not end in time, nothing else has to be looked at.
  const ends = (start: Instant): boolean => isBy(recipeEnd(planFrom(start, periods), stages, aim.shop.rhythm.stageDue), readyBy);
  return latestByTrying(periods, readyBy, lengthOf(stages), (start) => ends(start) && inTime(start));
}

function dueWithin({ heat, eachMorning }: Way, { planned, milestone, shop, air, now }: Aim, plan: HeatPlan): Instant | null {
  const ahead = eachMorning === null ? [] : plan.periods.filter(({ opens }) => opens > plan.start && opens > now).map(({ opens }): AirReading => ({ at: opens, value: eachMorning, humidity: air.at(-1)?.humidity ?? null }));
  const outlook = lookAt(plannedCure(planned, plan.start, eventsOf(heat, plan, shop)), shop, [...air, ...ahead]);
  return outlook.milestones.find((one) => one.kind === milestone)?.forecast.dueAt ?? null;
}

function eventsOf(heat: Heat, plan: HeatPlan, { rhythm }: Shop): HeatEvent[] {
  switch (heat.kind) {
    case 'air':
      return [];
    case 'heater':
      return heaterEvents(plan, heat.setting, rhythm.readingDue);
    case 'recipe':
      return recipeEvents(plan, heat.stages, rhythm.stageDue);
  }
}

const planFrom = (start: Instant, periods: readonly OpenPeriod[]): HeatPlan => ({ start, periods: periods.filter(({ closes }) => closes > start) });

const isBy = (due: Instant | null, readyBy: Instant): boolean => due !== null && due <= readyBy;

/** Where a later start can be due earlier: other air counts for it, or it is too late for a reading that would show less than the air. */
const cutsIn = (periods: readonly OpenPeriod[], { kind }: Heat, { air, shop }: Aim): Instant[] => [
  ...air.flatMap((reading) => READING_CHANGES.map((after) => plus(reading.at, after))),
  ...periods.map(({ opens }) => minus(opens, EARLY_BIRD)),
  ...(kind === 'heater' ? periods.map(({ closes }) => minus(closes, shop.rhythm.readingDue)) : []),
];

const lengthOf = (stages: readonly RecipeStage[]): Minutes => minutes(stages.reduce((sum, stage) => sum + stage.minutes, 0));
