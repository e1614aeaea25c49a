import type { z } from 'zod';
import type { MaterialCard, MilestoneKind, RateLaw } from './card.js';
import { panelTemperatures } from './panel-temperatures.js';

/**
 * Checks between fields: a card states at least one wait, its highest allowed temperature is not below a temperature that the
 * same card counts with, and the next coat has a time that is neither too soon nor too late for the same card.
 * Problems go to the context; the card comes back as it is.
 */
export function checkedAgainstLimits(card: MaterialCard, context: z.RefinementCtx): MaterialCard {
  if (card.milestones.every((rule) => rule.kind === 'flash-off')) context.addIssue({ code: 'custom', message: `has no milestone: a card with basis ${card.basis} must state at least one wait, a flash-off alone is none` });
  const laws = card.milestones.flatMap((rule) => rule.laws);
  const open = card.openTime?.by === 'rows' ? card.openTime.rows.map((row) => row.temperature) : [];
  refuseBelow('max-panel', card.maxPanel, [...laws.flatMap(panelTemperatures), ...open], context);
  refuseBelow('max-lamp', card.maxLamp, laws.flatMap(lampSettings), context);
  refuseShutWindow(card, context);
  return card;
}

function refuseBelow(field: string, maximum: number | null, stated: readonly number[], context: z.RefinementCtx): void {
  const hottest = Math.max(...stated);
  if (maximum === null || maximum >= hottest) return;
  context.addIssue({ code: 'custom', path: [field], message: `is ${maximum} °C, below ${hottest} °C that this card counts with` });
}

function refuseShutWindow(card: MaterialCard, context: z.RefinementCtx): void {
  const from = soonest(card, 'recoat-from');
  const flashOff = soonest(card, 'flash-off');
  if (card.recoatBy !== null && from === null) context.addIssue({ code: 'custom', path: ['recoat-by'], message: 'needs recoat-from on the same card: a window has two ends' });
  if (from === null) return;
  if (card.recoatBy !== null && card.recoatBy <= from) context.addIssue({ code: 'custom', path: ['recoat-by'], message: `must be later than recoat-from (${from} minutes at the soonest)` });
  if (flashOff !== null && flashOff > from) context.addIssue({ code: 'custom', path: ['flash-off'], message: `must not be longer than recoat-from (${from} minutes at the soonest)` });
}

/** Minutes that a milestone takes at best, the card's margin included; null: not by rows or by the clock. */
function soonest(card: MaterialCard, kind: MilestoneKind): number | null {
  const waits = card.milestones.filter((rule) => rule.kind === kind).flatMap((rule) => rule.laws).flatMap((law) => {
    if (law.law === 'elapsed') return [law.minutes];
    return law.law === 'credit' ? law.rows.map((row) => row.minutes * (1 + card.marginPercent / 100)) : [];
  });
  return waits.length === 0 ? null : Math.min(...waits);
}

function lampSettings(law: RateLaw): readonly number[] {
  return law.law === 'recipe' ? law.stages.map((stage) => stage.lamp) : [];
}
