import type { Celsius } from '../cure/units.js';
import type { Heater } from '../cure/history.js';
import { isAdhesive } from './decide-card.js';
import type { Note, Situation } from './decision.js';
import { recipeOf, settingsFor } from './heat-choices.js';
import type { Cure } from './job.js';
import { lineOf } from './line-of.js';

const KINDS = ['handling', 'full'] as const;

/** A setting that no sheet with panel temperatures names, and one recipe does: perhaps that is what was laid. */
export function otherRecipe({ card, job, ref, readings }: Cure, value: Celsius, heater: Heater, { cards }: Situation): Note[] {
  if (heater === 'pad' || !isAdhesive(card) || readings.length > 0 || settingsFor(card, KINDS, null).includes(value) || recipeOf(card, KINDS) !== null) return [];
  const [only, ...others] = cards.filter((other) => other.name !== card.name && isAdhesive(other) && recipeOf(other, KINDS)?.some(({ lamp }) => lamp === value) === true);
  return only === undefined || others.length > 0 ? [] : [{ note: 'other-recipe', card: only.name, line: lineOf({ kind: 'wrong-card', job, joint: ref.joint, card: only.name }) }];
}
