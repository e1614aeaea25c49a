import { readCards } from '../../src/config/cards-file.js';
import { readConfig } from '../../src/config.js';
import type { MaterialCard } from '../../src/cure/card.js';

/** The example cards that come with the program. Their figures are our own inventions. */
export const CARDS: readonly MaterialCard[] = shipped();

export function cardNamed(name: string): MaterialCard {
  const found = CARDS.find((card) => card.name === name);
  if (found === undefined) throw new Error(`There is no example card ${name}.`);
  return found;
}

function shipped(): readonly MaterialCard[] {
  const config = readConfig({});
  if (!config.ok) throw new Error(config.problems.join('\n'));
  const cards = readCards(config.config.cards.path);
  if (!cards.ok) throw new Error(JSON.stringify(cards.problems));
  return cards.cards;
}
