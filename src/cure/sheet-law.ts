import type { MilestoneRule, SheetRow } from './card.js';
import { fitStagedLaw, type StagedPoint } from './fit-staged-law.js';
import { kineticMinutes } from './kinetics.js';
import { colder, hotter } from './units.js';

/** The one rate behind a recipe and the other figures that a sheet states for the same milestone. */
export interface SheetLaw {
  /** Activation energy, J/mol. */
  readonly energy: number;
  /**
   * The law's own minutes at the coldest and the hottest temperature of the figures. Between two rows a table of rates
   * follows the law exactly; colder than the first counts nothing, hotter than the second gives no bonus.
   */
  readonly rows: readonly SheetRow[];
}

/** Every way in which a milestone's figures say that it is reached: a row is one stage, a recipe several. */
export const pointsOf = ({ laws }: MilestoneRule): StagedPoint[] =>
  laws.flatMap((law): StagedPoint[] => {
    if (law.law === 'credit') return law.rows.map((row) => ({ stages: [row] }));
    return law.law === 'recipe' ? [{ stages: law.stages.map((stage) => ({ temperature: stage.lamp, minutes: stage.minutes })) }] : [];
  });

/**
 * The law of a milestone that has a recipe, fitted through all its figures so that none of them is undercut. Null without
 * a recipe, and where the figures give no law: one stage says nothing about another temperature. For what is likely and
 * what is plausible only; nothing is announced on it.
 */
export const sheetLaw = (rule: MilestoneRule): SheetLaw | null => (rule.laws.some((law) => law.law === 'recipe') ? lawThrough(pointsOf(rule)) : null);

function lawThrough(points: readonly StagedPoint[]): SheetLaw | null {
  const law = fitStagedLaw(points);
  const temperatures = points.flatMap((point) => point.stages.map((stage) => stage.temperature));
  const [first] = temperatures;
  if (law === null || first === undefined) return null;
  const ends = [temperatures.reduce(colder, first), temperatures.reduce(hotter, first)];
  return { energy: law.energy, rows: ends.map((temperature) => ({ temperature, minutes: kineticMinutes(law, temperature) })) };
}
