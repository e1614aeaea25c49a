import type { HotWork } from './hot-work.js';
import type { Outlook } from './outlook.js';
import { confirmedAt } from './unfinished.js';

/** A cure that had begun and whose full strength nobody had confirmed when the hot work began. */
export function isUnconfirmedAt({ cure, ...outlook }: Outlook, { at }: Pick<HotWork, 'at'>): boolean {
  if (cure.scrapped || cure.openedAt > at || !cure.card.milestones.some((rule) => rule.kind === 'full')) return false;
  const confirmed = confirmedAt({ cure, ...outlook }, 'full');
  return confirmed === null || confirmed > at;
}

/** Hot work of which the foreman hears because of this cure: not planned wet, and not stopped for another reason anyway. */
export const isTold = (outlook: Outlook, weld: HotWork): boolean => !weld.wet && weld.ban === null && isUnconfirmedAt(outlook, weld);
