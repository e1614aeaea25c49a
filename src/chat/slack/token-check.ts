import { setTimeout as wait } from 'node:timers/promises';
import { z } from 'zod';
import type { webApi } from '@slack/bolt';
import { backoffMs } from '../../outbox/backoff.js';
import type { Health } from './health.js';
import { troubleWords } from './trouble-words.js';

const selfSchema = z.object({ user_id: z.string().min(1) });

/** Asks the platform whether it knows our token, until it does. Nothing waits for the answer. */
export class TokenCheck {
  readonly #client: webApi.WebClient;
  readonly #health: Health;
  readonly #closing = new AbortController();
  #botUserId: string | null = null;

  constructor(client: webApi.WebClient, health: Health) {
    this.#client = client;
    this.#health = health;
  }

  /** The bot's own chat id, once known. */
  get botUserId(): string | null {
    return this.#botUserId;
  }

  /** Ends when the token was accepted or the check was closed; never rejects. */
  async run(): Promise<void> {
    for (let attempt = 1; !this.#closing.signal.aborted; attempt += 1) {
      try {
        this.#botUserId = selfSchema.parse(await this.#client.auth.test()).user_id;
        this.#health.set('token', 'up', null);
        return;
      } catch (error) {
        this.#health.set('token', 'down', troubleWords(error));
      }
      // Rejects only when closed, which the loop checks.
      await wait(backoffMs(attempt), undefined, { signal: this.#closing.signal }).catch(() => undefined);
    }
  }

  close(): void {
    this.#closing.abort();
  }
}
