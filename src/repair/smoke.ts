import type { Check, Cure } from './job.js';
import { isFireWatch } from './watch-card.js';

/** Smoke or a smell that somebody reported on a fire watch, due or not, and that the foreman has not decided on; null: none. */
export function undecidedSmoke({ card, checks, releasedAt }: Pick<Cure, 'card' | 'checks' | 'releasedAt'>): Check | null {
  const last = isFireWatch(card) ? checks.findLast((check) => check.result === 'soft') : undefined;
  return last === undefined || (releasedAt !== null && releasedAt >= last.at) ? null : last;
}
