import type { MaterialCard } from '../cure/card.js';

/** The card of this name, whatever its capitals; null when none was named or it is not on the shelf. */
export function lookupCard(cards: readonly MaterialCard[], name: string | null): MaterialCard | null {
  if (name === null) return null;
  return cards.find((card) => card.name.toLowerCase() === name.toLowerCase()) ?? null;
}
