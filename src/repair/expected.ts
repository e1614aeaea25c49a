import { expectedProgress } from '../cure/expected.js';
import type { SheetRow } from '../cure/card.js';
import { minutesBetween, roundUpToMinute, type Instant } from '../cure/units.js';
import type { MilestoneOutlook, Outlook } from './outlook.js';

/** What the heated joint usually is; a thin skin warms faster, so this one errs late. */
const USUAL_BUILD_UP = 'two-sheets-with-flange';
/** Closer than this to the safe time the likely time says nothing new. */
const WORTH_SAYING = 5;

/**
 * When a milestone would be due if a reading confirmed what the lamp most likely does; null where that is no news.
 * Only ever shown beside the safe time, together with what would confirm it; nothing is announced on it.
 */
export function likelyDue(outlook: Outlook, one: MilestoneOutlook): Instant | null {
  const rows = creditRows(outlook, one);
  if (rows === null || outlook.history === null || outlook.overMaximum !== null || one.check.round > 1) return null;
  const { due } = expectedProgress(rows, outlook.history, USUAL_BUILD_UP);
  if (due === null) return null;
  const likely = roundUpToMinute(due);
  return one.check.dueAt !== null && minutesBetween(likely, one.check.dueAt) < WORTH_SAYING ? null : likely;
}

function creditRows({ cure }: Outlook, one: MilestoneOutlook): readonly SheetRow[] | null {
  const rule = cure.card.milestones.find((other) => other.kind === one.kind);
  return rule?.laws.flatMap((law) => (law.law === 'credit' ? [law.rows] : [])).at(0) ?? null;
}
