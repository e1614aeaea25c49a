import { sameCure } from './cure-ref.js';
import type { FactRecord } from './facts.js';

/**
 * What went to another job is told there: here only the move itself is left, and of a joint that carries nothing else
 * neither heat nor readings. The facts themselves stay in the book as they were entered.
 */
export function withoutMoved(live: readonly FactRecord[]): readonly FactRecord[] {
  const gone = live.flatMap(({ fact }) => (fact.type === 'moved-away' ? [fact.cure] : []));
  if (gone.length === 0) return live;
  const stays = live.flatMap(({ fact }) => (fact.type === 'cure-opened' && !gone.some((cure) => sameCure(cure, fact.cure)) ? [fact.cure.joint] : []));
  const emptied = gone.filter(({ joint }) => !stays.includes(joint)).map(({ joint }) => joint);
  return live.filter(({ fact }) => {
    if (fact.type === 'moved-away') return true;
    if ('cure' in fact) return !gone.some((cure) => sameCure(cure, fact.cure));
    return !('joint' in fact) || !emptied.some((joint) => joint === fact.joint);
  });
}
