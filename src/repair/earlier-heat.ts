import type { Cure } from './job.js';
import type { Shop } from './shop.js';
import { dayEnd, lastClosing } from './shop-hours.js';

/**
 * The cure without the heat of a day before it began. A lamp that was on at the joint may be on still, but not past a
 * closing time after which nobody saw it on and nobody stayed (no lamp runs alone).
 */
export function withoutEarlierHeat(cure: Cure, shop: Shop): Cure {
  const begun = cure.pasted ?? cure.start ?? cure.openedAt;
  const closing = lastClosing(shop, begun);
  const last = cure.heat.findLast((event) => event.at < begun);
  if (closing === null || last === undefined || last.at >= closing || cure.attended.some(({ at }) => dayEnd(shop, at) === dayEnd(shop, last.at))) return cure;
  return { ...cure, heat: cure.heat.filter((event) => event.at >= begun) };
}
