import type { MaterialCard } from '../cure/card.js';
import type { Celsius } from '../cure/units.js';

/** The card's highest panel temperature; a joint hotter than the highest lamp setting is too hot as well. */
export const hottestAllowed = (card: MaterialCard): Celsius | null => card.maxPanel ?? card.maxLamp;
