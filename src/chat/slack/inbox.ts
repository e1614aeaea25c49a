import type { Message } from '../../clerk/message.js';
import type { OutboxStore } from '../../clerk/ports.js';
import type { Instant } from '../../cure/units.js';
import { backoffMs } from '../../outbox/backoff.js';
import type { Log } from '../../outbox/log.js';
import { heardSchema } from './incoming.js';
import type { Heard } from './incoming.js';

export interface InboxPorts {
  readonly outbox: OutboxStore;
  readonly realNow: () => Instant;
  /** Turns what was heard into a message; may ask the platform who spoke. */
  readonly toMessage: (heard: Heard) => Promise<Message>;
  readonly say: (message: Message) => void;
  readonly log: Log;
}

/** After this many failures the message waits for the next start: something is wrong with the program, not the moment. */
const TRIES = 5;

/** Events between the database and the desk: kept before they are acknowledged, worked off one after the other. */
export class Inbox {
  readonly #ports: InboxPorts;
  readonly #failures = new Map<string, number>();
  #work: Promise<void> = Promise.resolve();
  #again: NodeJS.Timeout | null = null;
  #closed = false;

  constructor(ports: InboxPorts) {
    this.#ports = ports;
  }

  /** Keeps an event; false when it was kept or handled before. Throws when the database does. */
  keep(heard: Heard): boolean {
    return this.#ports.outbox.receive(`slack:ev:${heard.id}`, this.#ports.realNow(), JSON.stringify(heard));
  }

  /** Hands everything kept to the desk, in order; never rejects. */
  workOff(): Promise<void> {
    this.#work = this.#work.then(() => this.#all()).catch((error: unknown) => {
      this.#ports.log.error({ error }, 'What was received could not be read; it stays in the database.');
    });
    return this.#work;
  }

  /** Ends after the message in hand. */
  async close(): Promise<void> {
    this.#closed = true;
    if (this.#again !== null) clearTimeout(this.#again);
    await this.#work;
  }

  async #all(): Promise<void> {
    for (const { id, payload } of this.#ports.outbox.received()) {
      if (this.#closed) return;
      if ((this.#failures.get(id) ?? 0) < TRIES) await this.#one(id, payload);
    }
  }

  async #one(id: string, payload: string): Promise<void> {
    const { outbox, toMessage, say, log } = this.#ports;
    try {
      const message = await toMessage(heardSchema.parse(JSON.parse(payload)));
      if (this.#closed) return;
      say(message);
      outbox.handled(id);
      this.#failures.delete(id);
    } catch (error) {
      const failures = (this.#failures.get(id) ?? 0) + 1;
      this.#failures.set(id, failures);
      log.error({ error, id, failures }, 'A message from the chat platform could not be handled; it stays in the database.');
      if (failures < TRIES) this.#later(backoffMs(failures));
    }
  }

  #later(ms: number): void {
    if (this.#closed) return;
    if (this.#again !== null) clearTimeout(this.#again);
    this.#again = setTimeout(() => {
      void this.workOff();
    }, ms);
  }
}
