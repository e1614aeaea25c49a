import { AnswerBoxes, type Press } from './answer-boxes.js';
import { isAnswered } from './answered.js';
import { element, part } from './element.js';
import type { Phrases } from './phrases.js';
import type { DeskSheet, PostNote, ReplyNote } from './read.js';
import type { ShopClock } from './shop-clock.js';
import { pieces } from './words.js';

/** A line somebody wrote here, with the clerk's answer. */
export interface SaidEntry {
  readonly at: number;
  readonly who: string;
  readonly line: string;
  readonly reply: ReplyNote;
}

interface DrawnPost {
  readonly post: PostNote;
  readonly entry: HTMLElement;
  readonly boxes: AnswerBoxes;
  address(me: string | null): void;
}

const MOST_ENTRIES = 200;

/** The rows of the sheet, oldest first: when, who, what was entered and answered. */
export class Log {
  readonly #list = part('log', HTMLOListElement);
  readonly #blank = part('blank', HTMLElement);
  #posts: readonly DrawnPost[] = [];
  #desk: Pick<DeskSheet, 'board' | 'lastPost'> = { board: [], lastPost: 0 };
  #lastDay = '';

  constructor(
    readonly clock: ShopClock,
    readonly phrases: Phrases,
    readonly press: (press: Press) => void,
  ) {}

  /** From now on a screen reader hears what is added. */
  announce(): void {
    this.#list.setAttribute('aria-live', 'polite');
  }

  said({ at, who, line, reply }: SaidEntry): HTMLElement {
    const boxes = this.#boxes(reply);
    return this.#add(at, 'said', element('p', 'by', who), element('p', 'written', line), ...printed(reply), ...rowOf(boxes, reply));
  }

  /** `to` is the addressee's name, null for everyone; `me` the id of the person who writes here. */
  post(post: PostNote, to: string | null, me: string | null): HTMLElement {
    const grave = post.kind === 'safety' || post.kind === 'decision';
    const label = element('p', 'by addressee');
    const boxes = this.#boxes(post.reply);
    const entry = this.#add(post.at, grave ? 'post grave' : 'post', label, ...printed(post.reply), ...rowOf(boxes, post.reply));
    if (post.kind === 'safety') entry.setAttribute('role', 'alert');
    const address = (id: string | null): void => {
      if (post.to === id) this.phrases.put(label, 'for-you');
      else if (to === null) this.phrases.put(label, 'for-everyone');
      else this.phrases.put(label, 'for-whom', { who: to });
      entry.classList.toggle('for-me', post.to === id);
    };
    const drawn = { post, entry, boxes, address };
    address(me);
    this.#settle(drawn);
    this.#posts = [...this.#posts.filter((one) => one.entry.isConnected), drawn];
    return entry;
  }

  /** Somebody else writes now: what is for them stands out. */
  addressedTo(me: string | null): void {
    for (const drawn of this.#posts) drawn.address(me);
  }

  /** Another language: the days have other names. */
  renameDays(): void {
    for (const heading of this.#list.querySelectorAll<HTMLElement>('.day')) {
      this.#lastDay = this.clock.day(Number(heading.dataset['day']));
      heading.textContent = this.#lastDay;
    }
  }

  /** The board changed: questions that nobody waits for any more are struck out. */
  settle(desk: Pick<DeskSheet, 'board' | 'lastPost'>): void {
    this.#desk = desk;
    for (const drawn of this.#posts) this.#settle(drawn);
  }

  /** A board that is older than the post cannot know of its question. */
  #settle({ post, boxes }: DrawnPost): void {
    if (post.seq <= this.#desk.lastPost) boxes.answered(isAnswered(post, this.#desk.board));
  }

  #boxes(reply: ReplyNote): AnswerBoxes {
    return new AnswerBoxes(reply, this.clock, this.press, this.phrases);
  }

  #add(at: number, kind: string, who: HTMLElement, ...content: HTMLElement[]): HTMLElement {
    this.#blank.hidden = true;
    this.#newDay(at);
    const time = element('time', 'at', this.clock.time(at));
    time.dateTime = new Date(at).toISOString();
    const entry = element('li', `entry ${kind}`, element('div', 'stamp', time, who), element('div', 'body', ...content));
    this.#list.append(entry);
    while (this.#list.childElementCount > MOST_ENTRIES) this.#list.firstElementChild?.remove();
    return entry;
  }

  #newDay(at: number): void {
    const day = this.clock.day(at);
    if (day === this.#lastDay) return;
    const heading = element('li', 'day', day);
    heading.dataset['day'] = String(at);
    this.#list.append(heading);
    this.#lastDay = day;
  }
}

const rowOf = (boxes: AnswerBoxes, reply: ReplyNote): HTMLElement[] => (reply.buttons.length === 0 ? [] : [boxes.row]);

const printed = (reply: ReplyNote): HTMLElement[] =>
  reply.text.split('\n').map((line) => element('p', 'printed', ...pieces(line).map((piece) => (piece.strong ? element('b', '', piece.text) : piece.text))));
