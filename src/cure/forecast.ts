import type { MaterialCard, MilestoneKind, MilestoneRule } from './card.js';
import type { JointHistory } from './history.js';
import { progressBy } from './laws.js';
import { countsAt, shareAt, type Progress } from './progress.js';
import { roundUpToMinute, type Instant } from './units.js';

/** When one milestone is due on the safe side, and the sum behind it. */
export interface MilestoneForecast {
  readonly kind: MilestoneKind;
  /** Rounded up to the minute (rule R8); null: as things stand it never comes, or the sheet has no time for it. */
  readonly dueAt: Instant | null;
  /** The law that gives the time (the first to be fulfilled), or the one that is furthest. */
  readonly progress: Progress;
  /** All laws of the milestone, for `why`. */
  readonly laws: readonly Progress[];
}

/**
 * Forecast of every milestone of a card on one joint. A pure function of what was entered:
 * time passing alone never changes it.
 */
export function forecast(card: MaterialCard, history: JointHistory): MilestoneForecast[] {
  return card.milestones.map((rule) => forecastMilestone(rule, card, history));
}

function forecastMilestone(rule: MilestoneRule, card: MaterialCard, history: JointHistory): MilestoneForecast {
  const laws = rule.laws.map((law) => progressBy(law, card, history));
  const best = laws.reduce((one, other) => (comesFirst(other, one) ? other : one));
  return { kind: rule.kind, dueAt: best.due === null ? null : roundUpToMinute(best.due), progress: best, laws };
}

function comesFirst(one: Progress, other: Progress): boolean {
  if (one.due !== null) return other.due === null || one.due < other.due;
  return other.due === null && reach(one) > reach(other);
}

/** What is earned in the end where the end never comes. */
const reach = (progress: Progress): number => {
  const last = progress.pieces.filter((piece) => piece.to !== null).at(-1);
  return last?.to == null ? 0 : shareAt(progress, last.to);
};

/** Done part of the wait, by the law that is furthest at this moment. */
export const milestoneShare = (forecast: MilestoneForecast, at: Instant): number =>
  forecast.dueAt !== null && at >= forecast.dueAt ? 1 : Math.max(...forecast.laws.map((law) => shareAt(law, at)));

/** Whether any law counts at this moment. */
export const milestoneCounts = (forecast: MilestoneForecast, at: Instant): boolean => forecast.laws.some((law) => countsAt(law, at));
