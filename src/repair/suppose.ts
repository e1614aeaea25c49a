import type { AirReading } from '../cure/air.js';
import type { RecipeStage } from '../cure/card.js';
import type { HeatEvent } from '../cure/history.js';
import { later, plus, type Celsius, type Instant } from '../cure/units.js';
import type { Heat } from './heat-choices.js';
import type { Cure } from './job.js';
import { isAttended, lookAt, needsReading, type Outlook } from './outlook.js';
import type { Shop } from './shop.js';
import { dayEnd, isOpen, nextClosing } from './shop-hours.js';

/** The cure as it stands, and the moment from which something else is supposed about it. */
export interface Ground {
  readonly cure: Cure;
  readonly shop: Shop;
  readonly air: readonly AirReading[];
  readonly from: Instant;
}

/** One supposition looked at by the ordinary rules. */
export interface Supposition {
  readonly outlook: Outlook;
  /** A reading of the setting is assumed at this moment; null: none. */
  readonly readAt: Instant | null;
}

/** The cure with other heat from that moment on. What was entered about its heat since then no longer counts. */
export function supposeHeat(heat: Heat, ground: Ground): Supposition {
  switch (heat.kind) {
    case 'air':
      return { outlook: looked([{ kind: 'lamp-off', at: ground.from }], ground), readAt: null };
    case 'heater':
      return supposeHeater(heat, ground);
    case 'recipe':
      return { outlook: recipeFromNext(heat.stages, ground), readAt: null };
  }
}

/** The cure in other air from that moment on. */
export function supposeAir(value: Celsius, ground: Ground): Supposition {
  const { cure, shop, air } = inAir(value, ground);
  return { outlook: lookAt(cure, shop, air), readAt: null };
}

/** The same ground as if other air had been read at that moment: the water in it stays what it was. */
export function inAir(value: Celsius, ground: Ground): Ground {
  const before = ground.air.filter((reading) => reading.at <= ground.from);
  return { ...ground, air: [...before, { at: ground.from, value, humidity: before.at(-1)?.humidity ?? null }] };
}

/** When heat that begins at that moment stops counting by itself: at closing, at midnight if somebody stays or works late. */
export function heatEnds({ cure, shop, from }: Ground): Instant {
  const closing = isOpen(shop, from) ? nextClosing(shop, from) : null;
  return closing === null || isAttended(cure, shop, closing) ? dayEnd(shop, from) : closing;
}

/** A heater counts only by what it does to the joint, so one reading of its setting is assumed, if there is time for one. */
function supposeHeater({ heater, setting }: Extract<Heat, { readonly kind: 'heater' }>, ground: Ground): Supposition {
  const { from, cure, shop } = ground;
  const at = plus(from, shop.rhythm.readingDue);
  const readAt = needsReading(cure) && at < heatEnds(ground) ? at : null;
  const read: HeatEvent[] = readAt === null ? [] : [{ kind: 'reading', at: readAt, value: setting }];
  return { outlook: looked([{ kind: 'lamp-set', at: from, setting, heater }, ...read], ground), readAt };
}

/** The recipe goes on with its next stage: each begins when the one before is over and somebody has looked at it. */
function recipeFromNext(stages: readonly RecipeStage[], ground: Ground): Outlook {
  const { from, shop } = ground;
  const ends = heatEnds(ground);
  const events: HeatEvent[] = [];
  let outlook = looked(events, ground);
  for (const [index, stage] of stages.entries()) {
    const ended = outlook.stages[index]?.ended ?? null;
    if (ended !== null) continue;
    const before = outlook.stages[index - 1]?.ended ?? null;
    const at = before === null || before <= from ? from : later(from, plus(before, shop.rhythm.stageDue));
    if (at >= ends) break;
    events.push({ kind: 'lamp-set', at, setting: stage.lamp, heater: 'lamp' });
    outlook = looked(events, ground);
    if (outlook.stages[index]?.ended == null) break;
  }
  return outlook;
}

function looked(events: readonly HeatEvent[], { cure, shop, air, from }: Ground): Outlook {
  const heat = [...cure.heat.filter((event) => event.at <= from), ...events].sort((one, other) => one.at - other.at);
  return lookAt({ ...cure, heat }, shop, air);
}
