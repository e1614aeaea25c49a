import { coldestRow } from '../cure/rows.js';
import type { MaterialCard } from '../cure/card.js';
import { celsius, type Celsius } from '../cure/units.js';
import { isAdhesive } from './decide-card.js';

/** An adhesive for which nothing would count in this air, and what it needs. */
export interface TooCold {
  readonly card: string;
  readonly needs: Celsius;
}

/** Those of the cards whose coldest row is warmer than the air. */
export function tooColdFor(cards: readonly MaterialCard[], air: Celsius): TooCold[] {
  return cards.filter(isAdhesive).flatMap((card) => {
    const coldest = card.milestones.flatMap(({ laws }) => laws).flatMap((law) => (law.law === 'credit' ? (coldestRow(law.rows) ?? []) : []));
    const needs = celsius(Math.min(...coldest));
    return coldest.length > 0 && air < needs ? [{ card: card.name, needs }] : [];
  });
}
