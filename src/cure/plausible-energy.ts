import { fittedActivationEnergy } from './arrhenius.js';
import type { MilestoneRule } from './card.js';
import { sheetLaw } from './sheet-law.js';

/**
 * Activation energies that two-part adhesives and fillers show, J/mol. Published for epoxy-amine systems, mostly 44 to 70 kJ/mol:
 * 44-57 (Barral et al., J. Appl. Polym. Sci. 56 (1995) 1029), 55-60 (Thermochim. Acta 447 (2006) 167), 52.7-65.5
 * (J. South China Normal Univ., epoxy with polyamidoamine); the shop's usual staged figures ask for 69 to 81 (common practice, no source).
 */
export const USUAL_ENERGY = { least: 44_000, most: 81_000 } as const;

/**
 * The activation energy (J/mol) that a milestone's figures imply: of its rows, or of its recipe together with its unheated row.
 * Null where the figures give none. Outside the usual range a row is mistyped more often than the material is unusual.
 */
export function impliedEnergy(rule: MilestoneRule): number | null {
  if (rule.laws.some((law) => law.law === 'recipe')) return sheetLaw(rule)?.energy ?? null;
  return fittedActivationEnergy(rule.laws.flatMap((law) => (law.law === 'credit' ? law.rows : [])));
}

export const isUsualEnergy = (energy: number): boolean => energy >= USUAL_ENERGY.least && energy <= USUAL_ENERGY.most;
