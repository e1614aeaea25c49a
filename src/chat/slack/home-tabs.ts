import type { types, webApi } from '@slack/bolt';
import type { Desk } from '../../clerk/desk.js';
import type { OutboxStore } from '../../clerk/ports.js';
import { minus, minutes, type Instant } from '../../cure/units.js';
import type { Log } from '../../outbox/log.js';
import type { PersonId } from '../../repair/ids.js';
import type { Reader } from '../../reply/catalogue/speaker.js';
import { homeView } from './home-view.js';
import { outcomeOf } from './outcome-of.js';

export interface HomePorts {
  readonly desk: Pick<Desk, 'home' | 'onChange'>;
  readonly client: webApi.WebClient;
  readonly personOf: (chatId: string) => PersonId;
  readonly readerOf: (chatId: string) => Reader;
  /** Remembers who has opened theirs, across a start of the program. */
  readonly outbox: Pick<OutboxStore, 'homesSince' | 'homeOpened' | 'homeGone'>;
  readonly realNow: () => Instant;
  readonly log: Log;
  /** From a change to its showing, in milliseconds (2,000): a hundred changes in one breath are one. */
  readonly restMs?: number;
}

const REST_MS = 2_000;
const AGAIN_MS = 30_000;
/** Whoever has not opened theirs for so long looks at it no more. */
const LOOKED_AT = minutes(14 * 24 * 60);

/** The home tabs people have opened: shown when opened, and anew when what they say has changed. Nobody is told anything by them. */
export class HomeTabs {
  readonly #ports: HomePorts;
  /** What was last shown, by chat id; null: not shown as it should be. */
  readonly #shown = new Map<string, string | null>();
  readonly #stopListening: () => void;
  #timer: NodeJS.Timeout | null = null;
  #work: Promise<void> = Promise.resolve();
  #closed = false;

  constructor(ports: HomePorts) {
    this.#ports = ports;
    this.#stopListening = ports.desk.onChange(() => {
      if (this.#shown.size > 0) this.#later(ports.restMs ?? REST_MS);
    });
  }

  /** Somebody looks at their home tab; never rejects. */
  opened(user: string): Promise<void> {
    this.#shown.set(user, null);
    return this.#refresh(({ outbox, realNow }) => { outbox.homeOpened(user, realNow()); });
  }

  /** At start: what changed while nobody was at the desk is shown to everybody who looks; never rejects. */
  resume(): Promise<void> {
    return this.#refresh(({ outbox, realNow }) => {
      for (const user of outbox.homesSince(minus(realNow(), LOOKED_AT))) if (!this.#shown.has(user)) this.#shown.set(user, null);
    });
  }

  close(): void {
    this.#closed = true;
    this.#stopListening();
    if (this.#timer !== null) clearTimeout(this.#timer);
  }

  #later(ms: number): void {
    if (this.#closed || this.#timer !== null) return;
    this.#timer = setTimeout(() => {
      this.#timer = null;
      void this.#refresh();
    }, ms);
  }

  /** One after the other, so that an older state never overtakes a newer one. */
  #refresh(first: (ports: HomePorts) => void = () => undefined): Promise<void> {
    this.#work = this.#work.then(() => { first(this.#ports); }).then(() => this.#showChanged()).catch((error: unknown) => {
      this.#ports.log.error({ error }, 'A home tab could not be written.');
    });
    return this.#work;
  }

  async #showChanged(): Promise<void> {
    const { desk, personOf, readerOf } = this.#ports;
    for (const [user, before] of this.#shown) {
      if (this.#closed) return;
      const view = homeView(desk.home(personOf(user)), readerOf(user));
      const text = JSON.stringify(view);
      if (text !== before) await this.#show(user, view, text);
    }
  }

  async #show(user: string, view: types.HomeView, text: string): Promise<void> {
    const { client, outbox, log } = this.#ports;
    try {
      await client.views.publish({ user_id: user, view });
      this.#shown.set(user, text);
    } catch (error) {
      const outcome = outcomeOf(error);
      log.warn({ outcome }, 'A home tab could not be shown.');
      this.#shown.set(user, null);
      if (outcome.kind === 'refused') {
        this.#shown.delete(user);
        outbox.homeGone(user);
      } else this.#later(outcome.kind === 'limited' ? outcome.retryAfterSeconds * 1_000 : AGAIN_MS);
    }
  }
}
