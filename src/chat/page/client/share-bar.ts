import { element } from './element.js';
import type { Phrases } from './phrases.js';
import type { StateWord } from './words.js';

/** The done part of the wait as a bar with its number. The bar's pattern tells the state as well as its colour does. */
export function shareBar(share: number | null, state: StateWord, phrases: Phrases): HTMLElement {
  if (share === null) return element('div', 'share');
  // Rounded down: a wait that is not over never reads 100 %.
  const percent = Math.floor(Math.min(1, Math.max(0, share)) * 100);
  const fill = element('div', 'fill');
  fill.style.width = `${percent}%`;
  return element('div', `share is-${state}`, element('div', 'bar', fill), element('span', 'percent', phrases.say('share', { percent })));
}
