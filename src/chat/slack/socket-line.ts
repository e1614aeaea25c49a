import { setTimeout as wait } from 'node:timers/promises';
import type { SocketModeReceiver } from '@slack/bolt';
import { troubleWords } from './trouble-words.js';

export interface SocketLinePorts {
  /** A new receiver, with automatic reconnecting off: the library's own reconnecting ends the process when it fails. */
  readonly open: () => SocketModeReceiver;
  readonly onState: (state: 'up' | 'down' | 'starting', reason: string | null) => void;
  /** From the call for an address to the platform's greeting, in milliseconds (15,000). */
  readonly greetingMs?: number;
}

const GREETING_MS = 15_000;
/** A line that held this long was in order; one that broke sooner counts as a failure and is followed by a pause. */
const STEADY_MS = 10_000;
const FIRST_PAUSE_MS = 500;
const LONGEST_PAUSE_MS = 15_000;
const LEAVE_MS = 1_000;

/** Keeps one WebSocket to the platform: the platform renews it every few hours, networks drop it at any time. */
export class SocketLine {
  readonly #ports: SocketLinePorts;
  readonly #closing = new AbortController();
  #receiver: SocketModeReceiver | null = null;
  #life: Promise<void> = Promise.resolve();

  constructor(ports: SocketLinePorts) {
    this.#ports = ports;
  }

  /** Call once. Nothing waits for the line. */
  start(): void {
    this.#life = this.#live();
  }

  /** Drops the line; it is opened anew at once or after a pause. */
  restart(): void {
    if (this.#receiver !== null) this.#drop(this.#receiver);
  }

  async close(): Promise<void> {
    this.#closing.abort();
    this.restart();
    await Promise.race([this.#life, wait(2 * LEAVE_MS)]);
  }

  async #live(): Promise<void> {
    let failures = 0;
    do {
      const since = Date.now();
      const trouble = await this.#oneLine();
      failures = trouble === null && Date.now() - since >= STEADY_MS ? 0 : failures + 1;
    } while (await this.#pause(failures));
  }

  /** False when the line is closed for good. */
  async #pause(failures: number): Promise<boolean> {
    const pause = failures === 0 ? 0 : Math.min(FIRST_PAUSE_MS * 2 ** Math.min(failures - 1, 5), LONGEST_PAUSE_MS);
    // Rejects only when closed.
    await wait(pause, undefined, { signal: this.#closing.signal }).catch(() => undefined);
    return !this.#closing.signal.aborted;
  }

  /** Opens a line and stays until it is gone; returns what went wrong before the greeting, or null. */
  async #oneLine(): Promise<string | null> {
    const receiver = this.#ports.open();
    this.#receiver = receiver;
    const gone = new Promise<void>((resolve) => {
      receiver.client.once('disconnected', () => {
        resolve();
      });
    });
    try {
      await this.#greeted(receiver);
      this.#ports.onState('up', null);
      await gone;
      this.#ports.onState('starting', 'The line to the platform is being renewed.');
      return null;
    } catch (error) {
      const trouble = troubleWords(error);
      this.#ports.onState('down', trouble);
      return trouble;
    } finally {
      this.#receiver = null;
    }
  }

  async #greeted(receiver: SocketModeReceiver): Promise<void> {
    const started = receiver.start();
    const tooLate = new AbortController();
    const patience = this.#ports.greetingMs ?? GREETING_MS;
    const late = wait(patience, undefined, { signal: AbortSignal.any([tooLate.signal, this.#closing.signal]) }).then(() => {
      throw new Error(`no greeting within ${patience} ms`);
    });
    try {
      await Promise.race([started, late]);
    } catch (error) {
      this.#drop(receiver);
      // Asked to stop before it had an address, the library goes on and opens a line that nobody waits for any more.
      void started.then(() => { this.#drop(receiver); }, () => undefined);
      throw error;
    } finally {
      tooLate.abort();
    }
  }

  /** The second stop cuts a connection whose other end does not answer the first. */
  #drop(receiver: SocketModeReceiver): void {
    void receiver.stop();
    setTimeout(() => { void receiver.stop(); }, LEAVE_MS).unref();
  }
}
