import type { MaterialCard, MilestoneKind, RateLaw, RecipeStage } from '../cure/card.js';
import type { Heater } from '../cure/history.js';
import { panelTemperatures } from '../cure/panel-temperatures.js';
import { celsius, type Celsius } from '../cure/units.js';

/** What could heat a joint. */
export type Heat =
  | { readonly kind: 'air' }
  | { readonly kind: 'heater'; readonly heater: Heater; readonly setting: Celsius }
  | { readonly kind: 'recipe'; readonly stages: readonly RecipeStage[] };

/** The longest recipe of these milestones; none: null. */
export function recipeOf(card: MaterialCard, kinds: readonly MilestoneKind[]): readonly RecipeStage[] | null {
  const recipes = lawsOf(card, kinds).flatMap((law) => (law.law === 'recipe' ? [law.stages] : []));
  return recipes.length === 0 ? null : recipes.reduce((one, other) => (other.length > one.length ? other : one));
}

/** Lamp settings that the card has figures for, coldest first: hotter than the air, not above its maximum. */
export function settingsFor(card: MaterialCard, kinds: readonly MilestoneKind[], air: Celsius | null): Celsius[] {
  const highest = highestSetting(card) ?? celsius(Infinity);
  const temperatures = lawsOf(card, kinds).flatMap(panelTemperatures);
  return [...new Set(temperatures)].filter((one) => one <= highest && (air === null || one > air)).sort((one, other) => one - other);
}

/** No lamp may be set higher for this card. */
export const highestSetting = (card: MaterialCard): Celsius | null => card.maxLamp ?? card.maxPanel;

/** So many of them, evenly spread; the last always. */
export function spread<T>(values: readonly T[], most: number): T[] {
  if (values.length <= most) return [...values];
  const last = values.length - 1;
  return Array.from({ length: most }, (_, index) => values[last - Math.round((index * last) / Math.max(1, most - 1))]).flatMap((value) => (value === undefined ? [] : [value])).reverse();
}

const lawsOf = (card: MaterialCard, kinds: readonly MilestoneKind[]): RateLaw[] => card.milestones.filter((rule) => kinds.includes(rule.kind)).flatMap((rule) => rule.laws);
