import { part } from './element.js';

/** Says since when there has been no connection. The stream and the requests both report here. */
export class Outage {
  readonly #words = part('outage', HTMLElement);
  #lost = false;

  /** `time` is the shop's time as the page shows it. */
  lost(time: string): void {
    if (this.#lost) return;
    this.#lost = true;
    this.#words.textContent = `no connection since ${time}`;
  }

  over(): void {
    this.#lost = false;
    this.#words.textContent = '';
  }
}
