import { part } from './element.js';
import type { Phrases } from './phrases.js';
import type { DeskSheet } from './read.js';

const put = (id: string, words: string): void => {
  const place = part(id, HTMLElement);
  if (place.textContent !== words) place.textContent = words;
};

/** The bar that clips the sheet: shop, time, and how many cars wait. */
export const showTime = (time: string, day: string): void => {
  put('now', time);
  put('day', day);
};

export function showHead(desk: DeskSheet, phrases: Phrases, tally: string, due: number): void {
  put('shop', desk.shop);
  put('tally', tally);
  document.title = `${due > 0 ? `(${due}) ` : ''}${desk.shop}`;
  part('practice', HTMLElement).hidden = desk.practice === null;
  part('practice-tabs', HTMLElement).hidden = desk.practice !== 'standing';
  part('day-tabs', HTMLElement).hidden = desk.practice !== 'day';
  put('practice-words', desk.practice === null ? '' : phrases.say(`practice-${desk.practice}`));
}

/** An empty book shows what could be written; a quiet day shows that nothing waits. */
export function showEmptiness(desk: DeskSheet): void {
  const empty = desk.board.length === 0;
  part('examples', HTMLElement).hidden = !(empty && desk.lastPost === 0);
  part('nothing', HTMLElement).hidden = !empty;
}
