import { element, part, tab } from './element.js';
import type { PostNote, ReplyNote } from './read.js';
import type { ShopClock } from './shop-clock.js';
import { pieces } from './words.js';

/** A line somebody wrote here, with the clerk's answer. */
export interface SaidEntry {
  readonly at: number;
  readonly who: string;
  readonly line: string;
  readonly reply: ReplyNote;
}

export interface Press {
  readonly reply: string;
  readonly button: string;
  /** Called when the press was taken. */
  readonly taken: () => void;
}

const MOST_ENTRIES = 200;

/** The ruled lines of the sheet, oldest first. */
export class Log {
  readonly #list = part('log', HTMLOListElement);
  readonly #blank = part('blank', HTMLElement);
  readonly #addresses: ((me: string | null) => void)[] = [];
  #lastDay = '';

  constructor(
    readonly clock: ShopClock,
    readonly press: (press: Press) => void,
  ) {}

  /** From now on a screen reader hears what is added. */
  announce(): void {
    this.#list.setAttribute('aria-live', 'polite');
  }

  said(entry: SaidEntry): HTMLElement {
    const written = element('p', 'written', entry.line, ' ', element('span', 'by', entry.who));
    return this.#add(entry.at, 'said', written, ...this.#printed(entry.reply));
  }

  /** `to` is the addressee's name, `me` the id of the person who writes here. */
  post(post: PostNote, to: string, me: string | null): HTMLElement {
    const grave = post.kind === 'safety' || post.kind === 'decision';
    const label = element('p', 'addressee');
    const entry = this.#add(post.at, grave ? 'post grave' : 'post', label, ...this.#printed(post.reply));
    if (post.kind === 'safety') entry.setAttribute('role', 'alert');
    const address = (id: string | null): void => {
      label.textContent = post.to === id ? 'for you' : `for ${to}`;
      entry.classList.toggle('for-me', post.to === id);
    };
    address(me);
    this.#addresses.push(address);
    return entry;
  }

  /** Somebody else writes now: what is for them stands out. */
  addressedTo(me: string | null): void {
    for (const address of this.#addresses) address(me);
  }

  #add(at: number, kind: string, ...content: HTMLElement[]): HTMLElement {
    this.#blank.hidden = true;
    const day = this.clock.day(at);
    if (day !== this.#lastDay) this.#list.append(element('li', 'day', day));
    this.#lastDay = day;
    const time = element('time', 'margin', this.clock.time(at));
    time.dateTime = new Date(at).toISOString();
    const entry = element('li', `entry ${kind}`, time, element('div', 'body', ...content));
    this.#list.append(entry);
    while (this.#list.childElementCount > MOST_ENTRIES) this.#list.firstElementChild?.remove();
    return entry;
  }

  #printed(reply: ReplyNote): HTMLElement[] {
    const lines = reply.text.split('\n').map((line) => element('p', 'printed', ...pieces(line).map((piece) => (piece.strong ? element('b', '', piece.text) : piece.text))));
    if (reply.buttons.length === 0) return lines;
    const tabs = reply.buttons.map((button) => {
      const made = tab(button.label, () => { this.press({ reply: reply.id, button: button.id, taken: () => { stamp(made, this.clock); } }); });
      made.title = button.id;
      return made;
    });
    return [...lines, element('div', 'tabs', ...tabs)];
  }
}

/** A pressed tab keeps showing that and when it was pressed. */
function stamp(pressed: HTMLButtonElement, clock: ShopClock): void {
  pressed.classList.add('pressed');
  pressed.disabled = true;
  pressed.append(element('span', 'pressed-at', ` ✓ ${clock.time(clock.now())}`));
}
