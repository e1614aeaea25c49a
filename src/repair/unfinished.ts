import type { MilestoneKind } from '../cure/card.js';
import { earlier, later, type Instant } from '../cure/units.js';
import type { Outlook } from './outlook.js';
import { isFireWatch } from './watch-card.js';

/** One wait on a car that no person has confirmed by some moment. */
export interface Unfinished {
  readonly outlook: Outlook;
  readonly milestone: MilestoneKind;
  /** Null: no time in sight, or not closed yet. */
  readonly dueAt: Instant | null;
}

/** Time in the oven is what such a wait is for, and a fire watch hardens nothing. */
const NO_STRENGTH: readonly MilestoneKind[] = ['dwell', 'fire-watch'];

/** When a person's check confirmed it, or a later strength that includes it; null: not so far. */
export function confirmedAt({ milestones }: Outlook, kind: MilestoneKind): Instant | null {
  const index = milestones.findIndex((one) => one.kind === kind);
  const answers = index < 0 ? [] : milestones.slice(index).flatMap(({ check }) => (check.phase === 'confirmed' && check.answer !== null ? [check.answer.at] : []));
  const [first, ...others] = answers;
  return first === undefined ? null : others.reduce(earlier, first);
}

/** When the last of the cures that have this milestone was confirmed; null while one is not, and where none has it. */
export function confirmedOn(outlooks: readonly Outlook[], kind: MilestoneKind): Instant | null {
  const having = outlooks.filter(({ cure }) => !cure.scrapped && cure.card.milestones.some((rule) => rule.kind === kind)).map((outlook) => confirmedAt(outlook, kind));
  const known = having.flatMap((at) => at ?? []);
  const [first, ...others] = known;
  return first === undefined || known.length < having.length ? null : others.reduce(later, first);
}

/** Every strength that was not confirmed by `at`, of the cures that were begun by then; `at` null: as the book stands. */
export function unfinished(outlooks: readonly Outlook[], at: Instant | null): Unfinished[] {
  return outlooks.filter(({ cure }) => !cure.scrapped && (at === null || cure.openedAt <= at)).flatMap((outlook) => {
    const kinds = outlook.cure.card.milestones.map((rule) => rule.kind).filter((kind) => !NO_STRENGTH.includes(kind));
    return kinds.filter((kind) => !isBy(confirmedAt(outlook, kind), at)).map((milestone) => unfinishedOf(outlook, milestone));
  });
}

/** The fire watches that nobody has answered by `at`, of the hot work that was begun by then; hot work that goes on counts as well. `at` null: as the book stands. */
export function runningWatches(outlooks: readonly Outlook[], at: Instant | null): Unfinished[] {
  const begun = outlooks.filter(({ cure }) => isFireWatch(cure.card) && !cure.scrapped && (at === null || cure.openedAt <= at));
  return begun.filter((outlook) => !isBy(confirmedAt(outlook, 'fire-watch'), at)).map((outlook) => unfinishedOf(outlook, 'fire-watch'));
}

export const unfinishedOf = (outlook: Outlook, milestone: MilestoneKind): Unfinished => ({ outlook, milestone, dueAt: outlook.milestones.find((one) => one.kind === milestone)?.check.dueAt ?? null });

const isBy = (confirmed: Instant | null, at: Instant | null): boolean => confirmed !== null && (at === null || confirmed <= at);
