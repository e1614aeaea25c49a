import { newKey } from './new-key.js';
import { isFields } from './read.js';
import { Remembered } from './remembered.js';

/** A message on its way. It keeps its id until its outcome is known, so that sending it again cannot enter it twice. */
export interface Unsent {
  readonly key: string;
  readonly from: string;
  readonly text: string;
}

/** Remembers the one line whose outcome is unknown, also across a reload of the page. */
export class UnsentLine {
  readonly #kept = new Remembered('cureclerk.unsent', 'sessionStorage');

  get(): Unsent | null {
    const text = this.#kept.get();
    if (text === null) return null;
    const value: unknown = JSON.parse(text);
    return isFields(value) && typeof value['key'] === 'string' && typeof value['from'] === 'string' && typeof value['text'] === 'string'
      ? { key: value['key'], from: value['from'], text: value['text'] }
      : null;
  }

  /** The message for this line: the unsent one when it is the same line by the same person, else a new one. */
  of(from: string, text: string): Unsent {
    const before = this.get();
    const message = before !== null && before.from === from && before.text === text ? before : { key: newKey(), from, text };
    this.#kept.set(JSON.stringify(message));
    return message;
  }

  clear(): void {
    this.#kept.set(null);
  }
}
