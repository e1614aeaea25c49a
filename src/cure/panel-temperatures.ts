import type { RateLaw } from './card.js';
import type { Celsius } from './units.js';

/** The joint temperatures that a law's figures are stated for. */
export function panelTemperatures(law: RateLaw): readonly Celsius[] {
  switch (law.law) {
    case 'credit':
      return law.rows.map((row) => row.temperature);
    case 'above':
    case 'dwell':
      return [law.temperature];
    case 'recipe':
    case 'table':
    case 'depth-root':
    case 'elapsed':
      return [];
  }
}
