import { element, tab } from './element.js';
import type { Phrases } from './phrases.js';
import type { ReplyNote } from './read.js';
import type { ShopClock } from './shop-clock.js';

export interface Press {
  readonly reply: string;
  readonly button: string;
  /** The rest of the line is to be written. */
  readonly asks: boolean;
  /** Called when the press was taken. */
  readonly taken: () => void;
}

/** The boxes under one answer. A pressed one keeps its stamp; when the question is answered, the others are struck out. */
export class AnswerBoxes {
  readonly row = element('div', 'tabs');
  readonly #boxes: readonly HTMLButtonElement[];
  readonly #word = element('span', 'answered');

  constructor(reply: ReplyNote, clock: ShopClock, press: (press: Press) => void, phrases: Phrases) {
    phrases.put(this.#word, 'answered');
    this.#boxes = reply.buttons.map((button) => {
      const made = tab(button.label, () => { press({ reply: reply.id, button: button.id, asks: button.asks, taken: () => { stamp(made, clock); } }); });
      made.title = button.id;
      return made;
    });
    this.#word.hidden = true;
    this.row.append(...this.#boxes, this.#word);
  }

  /** An answer that is taken back opens the question again. */
  answered(over: boolean): void {
    if (this.#word.hidden === !over) return;
    this.#word.hidden = !over;
    this.row.classList.toggle('over', over);
    for (const box of this.#boxes) box.disabled = over || box.classList.contains('pressed');
  }
}

/** A pressed box keeps showing that and when it was pressed. */
function stamp(pressed: HTMLButtonElement, clock: ShopClock): void {
  pressed.classList.add('pressed');
  pressed.disabled = true;
  pressed.append(element('span', 'pressed-at', ` ✓ ${clock.time(clock.now())}`));
}
