import { part } from './element.js';
import type { Phrases } from './phrases.js';

/** Says since when there has been no connection. The stream and the requests both report here. */
export class Outage {
  readonly #words = part('outage', HTMLElement);
  #lost = false;

  constructor(readonly phrases: Phrases) {}

  /** `time` is the shop's time as the page shows it. */
  lost(time: string): void {
    if (this.#lost) return;
    this.#lost = true;
    this.phrases.put(this.#words, 'no-connection', { time });
  }

  over(): void {
    this.#lost = false;
    this.#words.textContent = '';
    delete this.#words.dataset['say'];
  }
}
