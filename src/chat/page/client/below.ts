import { part } from './element.js';
import type { Phrases } from './phrases.js';

const NEAR_PIXELS = 160;

/** Keeps the foot of the sheet in view for those who read there, and tells the others what came in below. */
export class Below {
  readonly #tab = part('below', HTMLButtonElement);
  #first: HTMLElement | null = null;
  #count = 0;

  constructor(readonly phrases: Phrases) {
    this.#tab.addEventListener('click', () => {
      this.#first?.scrollIntoView({ block: 'start' });
      this.#clear();
    });
    addEventListener('scroll', () => { if (atFoot()) this.#clear(); }, { passive: true });
  }

  /** Where the board stands beside the sheet, the sheet opens at its newest line; where it stands above, the board is seen first. */
  begin(): void {
    if (matchMedia('(min-width: 980px)').matches) scrollTo({ top: document.documentElement.scrollHeight, behavior: 'instant' });
  }

  /** Adds an entry by `add` and follows it when the foot was in view. */
  add(add: () => HTMLElement, forMe: boolean): void {
    const following = atFoot();
    const entry = add();
    if (following) {
      entry.scrollIntoView({ block: 'end' });
      return;
    }
    this.#first ??= entry;
    this.#count += 1;
    if (forMe) this.#first = entry;
    this.phrases.put(this.#tab, forMe ? 'for-you-below' : 'new-below', { count: this.#count });
    this.#tab.hidden = false;
  }

  #clear(): void {
    this.#first = null;
    this.#count = 0;
    this.#tab.hidden = true;
  }
}

const atFoot = (): boolean => innerHeight + scrollY >= document.documentElement.scrollHeight - NEAR_PIXELS;
