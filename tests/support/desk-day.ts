import { Clerk } from '../../src/clerk/clerk.js';
import { NO_ADDRESSING } from '../../src/clerk/desk-ports.js';
import { messageId, type Post } from '../../src/clerk/message.js';
import { openStandingClock, type StandingClock } from '../../src/clock/standing-clock.js';
import { instant, type Instant } from '../../src/cure/units.js';
import { jobNo, personId } from '../../src/repair/ids.js';
import { nameOf } from '../../src/repair/people.js';
import type { Shop } from '../../src/repair/shop.js';
import type { Answer } from '../../src/reply/answer.js';
import { toText } from '../../src/reply/to-text.js';
import { memoryBook } from '../../src/store/memory-book.js';
import { CARDS } from './card-shelf.js';
import { exampleShop } from './example-shop.js';
import { on, said } from './joint.js';
import { PROCEDURES } from './procedure-shelf.js';
import { quietLog } from './quiet-log.js';

/** A desk with everything between the typed line and the answer, and no program around it: grammar, decision, book, words. */
export class DeskDay {
  readonly shop: Shop;
  readonly #store = memoryBook();
  readonly #moment: (when: string) => Instant;
  #clock: StandingClock;
  #clerk: Clerk;
  #messages = 0;

  /** `moment`: what the times of this day mean; a week in March if nothing else is said. */
  constructor(change: Partial<Shop> = {}, begins = '07:00', moment: (when: string) => Instant = on) {
    this.shop = exampleShop(change);
    this.#moment = moment;
    [this.#clock, this.#clerk] = this.#opens(begins);
  }

  #opens(when: string): [StandingClock, Clerk] {
    const clock = openStandingClock(instant(this.#moment(when)), (error) => { throw error; });
    const clerk = new Clerk({ store: this.#store, clock, shop: this.shop, cards: CARDS, procedures: PROCEDURES, addressing: NO_ADDRESSING, log: quietLog(), clockRingsBells: true });
    clerk.resume();
    return [clock, clerk];
  }

  /** Moves the clock; everything that comes due on the way is said. */
  at(when: string): void {
    this.#clock.advanceTo(this.#moment(when));
    this.#clerk.catchUp();
  }

  /** Nobody was at the desk from the last moment on; it opens again now with the same book. */
  isDownUntil(when: string): void {
    this.#clock.close();
    [this.#clock, this.#clerk] = this.#opens(when);
  }

  momentOf(when: string): Instant {
    return this.#moment(when);
  }

  /** Types a line at a moment. */
  says(who: string, when: string, text: string, thread: string | null = null): Answer {
    this.at(when);
    this.#messages += 1;
    const from = { id: personId(who), name: nameOf(this.shop, personId(who)) };
    return this.#clerk.say({ id: messageId(`m${this.#messages}`), from, text, thread: thread === null ? null : jobNo(thread), returnPath: { chat: 'page' } }).answer;
  }

  /** The same as plain text, its buttons behind it. */
  told(who: string, when: string, text: string, thread: string | null = null): string {
    return withButtons(this.says(who, when, text, thread));
  }

  posts(...kinds: readonly Post['about']['kind'][]): Post[] {
    return this.#store.postsAfter(0, 100_000).filter((post) => kinds.length === 0 || kinds.includes(post.about.kind));
  }

  /** `21:45 handover ines`, one line a post. */
  heard(...kinds: readonly Post['about']['kind'][]): string[] {
    return this.posts(...kinds).map((post) => `${said(post.at)} ${post.about.kind} ${post.to}`);
  }
}

/** Plain text, then `[label] line` for each button, `…` where its reason is to be written. */
export const withButtons = (answer: Answer): string => [toText(answer), ...answer.buttons.map(({ label, line, asks }) => `[${label}] ${line}${asks === undefined ? '' : ' …'}`)].join('\n');
