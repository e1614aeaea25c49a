import type { SheetRow } from '../cure/card.js';
import { expectedProgress, expectedTemperatureAt, nominalProgress } from '../cure/expected.js';
import { sheetLaw } from '../cure/sheet-law.js';
import { minutes, minutesBetween, roundUpToMinute, type Celsius, type Instant } from '../cure/units.js';
import type { MilestoneOutlook, Outlook } from './outlook.js';

/** What a joint is taken to be until somebody says; a thin skin warms faster, so this one errs late. */
const USUAL_BUILD_UP = 'two-sheets-with-flange';
/** Closer than this to the announced time the likely time says nothing new. */
const WORTH_SAYING = 5;

/**
 * Where a likely time comes from: the printed rows, with the temperature that the joint then most likely has, or the law
 * behind a recipe (energy in J/mol).
 */
export type Likely =
  | { readonly by: 'rows'; readonly at: Instant; readonly temperature: Celsius | null }
  | { readonly by: 'law'; readonly at: Instant; readonly energy: number };

/**
 * When a milestone would be due on the most likely temperatures; null where that is no news, and for a joint that was read
 * over the maximum. Only ever shown beside the announced time; nothing is announced on it.
 */
export function likelyOf(outlook: Outlook, one: MilestoneOutlook): Likely | null {
  if (outlook.overMaximum !== null || one.check.round > 1) return null;
  const likely = unfiltered(outlook, one);
  const announced = one.check.dueAt;
  return likely === null || (announced !== null && minutesBetween(likely.at, announced) < WORTH_SAYING) ? null : likely;
}

/** The moment alone. By the rows it is what a reading would lock in; nothing confirms the law of a recipe. */
export const likelyDue = (outlook: Outlook, one: MilestoneOutlook): Instant | null => likelyOf(outlook, one)?.at ?? null;

function unfiltered({ cure, history }: Outlook, one: MilestoneOutlook): Likely | null {
  const { card, buildUp } = cure;
  const rule = card.milestones.find((other) => other.kind === one.kind);
  if (rule === undefined || history === null) return null;
  if (rule.laws.some((law) => law.law === 'recipe')) {
    const law = sheetLaw(rule);
    const due = law === null ? null : nominalProgress(law, history, card.maxLamp).due;
    return law === null || due === null ? null : { by: 'law', at: roundUpToMinute(due), energy: law.energy };
  }
  const rows = rule.laws.flatMap((law) => (law.law === 'credit' ? [law.rows] : [])).at(0);
  if (rows === undefined) return null;
  const progress = expectedProgress(longerRows(rows, card.marginPercent), history, buildUp ?? USUAL_BUILD_UP, card.maxPanel);
  return progress.due === null ? null : { by: 'rows', at: roundUpToMinute(progress.due), temperature: expectedTemperatureAt(progress, progress.due) };
}

const longer = new WeakMap<readonly SheetRow[], { readonly marginPercent: number; readonly rows: readonly SheetRow[] }>();

/** A reading locks in what the announced side makes of it: the card's margin is in both. The same rows again, so that their tables are kept. */
function longerRows(rows: readonly SheetRow[], marginPercent: number): readonly SheetRow[] {
  if (marginPercent === 0) return rows;
  const known = longer.get(rows);
  if (known?.marginPercent === marginPercent) return known.rows;
  const made = rows.map((row) => ({ ...row, minutes: minutes(row.minutes * (1 + marginPercent / 100)) }));
  longer.set(rows, { marginPercent, rows: made });
  return made;
}
