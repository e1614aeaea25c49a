import type { z } from 'zod';
import type { MaterialCard, RateLaw } from './card.js';

/**
 * Checks between fields: a card states at least one wait, and its highest allowed temperature is not below a
 * temperature that the same card counts with. Problems go to the context; the card comes back as it is.
 */
export function checkedAgainstLimits(card: MaterialCard, context: z.RefinementCtx): MaterialCard {
  if (card.milestones.length === 0) context.addIssue({ code: 'custom', message: `has no milestone: a card with basis ${card.basis} must state at least one wait` });
  const laws = card.milestones.flatMap((rule) => rule.laws);
  const open = card.openTime?.by === 'rows' ? card.openTime.rows.map((row) => row.temperature) : [];
  refuseBelow('max-panel', card.maxPanel, [...laws.flatMap(panelTemperatures), ...open], context);
  refuseBelow('max-lamp', card.maxLamp, laws.flatMap(lampSettings), context);
  return card;
}

function refuseBelow(field: string, maximum: number | null, stated: readonly number[], context: z.RefinementCtx): void {
  const hottest = Math.max(...stated);
  if (maximum === null || maximum >= hottest) return;
  context.addIssue({ code: 'custom', path: [field], message: `is ${maximum} °C, below ${hottest} °C that this card counts with` });
}

function panelTemperatures(law: RateLaw): readonly number[] {
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

function lampSettings(law: RateLaw): readonly number[] {
  return law.law === 'recipe' ? law.stages.map((stage) => stage.lamp) : [];
}
