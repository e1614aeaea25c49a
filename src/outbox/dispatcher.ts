import { setTimeout as wait } from 'node:timers/promises';
import type { OutboxRow, OutboxStore } from '../clerk/ports.js';
import { instant } from '../cure/units.js';
import type { Instant } from '../cure/units.js';
import type { ChatSender, Finding, Outcome } from './chat-sender.js';
import { laneOf } from '../clerk/lane-of.js';
import { Lanes } from './lanes.js';
import type { Log } from './log.js';
import { USUAL_PACING } from './pacing.js';
import type { Pacing } from './pacing.js';

export interface DispatcherPorts {
  readonly store: OutboxStore;
  readonly sender: ChatSender;
  /** Real time, never the practice clock: the platform's limits are real. Waits do not depend on it being set back or forward. */
  readonly realNow: () => Instant;
  readonly log: Log;
  readonly pacing?: Partial<Pacing>;
}

/**
 * Carries the outbox out of the house: claim (committed), send, mark. One row per lane is on its way at any time.
 * A row whose outcome is unknown keeps its lane until the platform was asked whether the message stands there;
 * it is never sent again blindly. No error leaves this class.
 */
export class Dispatcher {
  readonly #ports: DispatcherPorts;
  readonly #pacing: Pacing;
  readonly #lanes = new Lanes();
  readonly #inFlight = new Set<Promise<void>>();
  readonly #closing = new AbortController();
  readonly #began: number;
  #closed = false;
  #resumed = false;
  /** A look is already under way; a hundred commits in one breath need no more. */
  #soon = false;
  #storeFailures = 0;
  #timer: NodeJS.Timeout | null = null;

  constructor(ports: DispatcherPorts) {
    this.#ports = ports;
    this.#pacing = { ...USUAL_PACING, ...ports.pacing };
    this.#began = ports.realNow() - performance.now();
  }

  /**
   * Something may wait: look soon. Cheap, and may be called after every commit.
   * The first call also takes up what an earlier process left half done.
   */
  kick(): void {
    if (this.#soon) return;
    this.#soon = true;
    this.#arm(0);
  }

  /** Starts nothing new and waits for what is being sent, `drainMs` at most; what is then still open is looked up at the next start. */
  async close(): Promise<void> {
    this.#closing.abort();
    if (this.#timer !== null) clearTimeout(this.#timer);
    const giveUp = new AbortController();
    // The only way these waits fail is being called off.
    const deadline = wait(this.#pacing.drainMs, undefined, { signal: giveUp.signal }).catch(() => undefined);
    await Promise.race([Promise.allSettled(this.#inFlight), deadline]);
    giveUp.abort();
    this.#closed = true;
  }

  #arm(delayMs: number): void {
    if (this.#closing.signal.aborted) return;
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      this.#look();
    }, delayMs);
  }

  #look(): void {
    this.#soon = false;
    try {
      if (!this.#resumed) this.#resume();
      const next = this.#sendWaiting();
      this.#storeFailures = 0;
      if (Number.isFinite(next)) this.#arm(next - this.#now());
    } catch (error) {
      this.#storeFailures += 1;
      this.#ports.log.error({ error }, 'The outbox could not be read; it is tried again in a moment.');
      this.#arm(this.#pacing.backoff(this.#storeFailures));
    }
  }

  #resume(): void {
    for (const row of this.#ports.store.unknown()) this.#occupy(row, () => this.#settle(row, 0));
    this.#resumed = true;
  }

  /** Sets the free lanes to work; returns when to look again. */
  #sendWaiting(): number {
    const now = this.#now();
    let next = Infinity;
    for (const row of this.#ports.store.nextWaiting(now)) {
      const freeAt = this.#lanes.freeAt(laneOf(row.delivery.target));
      if (freeAt <= now) this.#occupy(row, () => this.#deliver(row));
      else next = Math.min(next, freeAt);
    }
    const earliest = this.#ports.store.earliestNotBefore();
    if (earliest === null) return next;
    return Math.min(next, earliest > now ? earliest : now + this.#pacing.pollMs);
  }

  #occupy(row: OutboxRow, work: () => Promise<void>): void {
    const lane = laneOf(row.delivery.target);
    this.#lanes.occupy(lane);
    const done = work()
      .catch((error: unknown) => {
        this.#ports.log.error({ error, key: row.delivery.key }, 'A message could not be taken out of the outbox; it is tried again in a moment.');
        this.#lanes.rest(lane, this.#later(this.#pacing.backoff(row.attempts + 1)));
      })
      .finally(() => {
        this.#lanes.release(lane);
        this.#inFlight.delete(done);
        this.kick();
      });
    this.#inFlight.add(done);
  }

  async #deliver(row: OutboxRow): Promise<void> {
    this.#ports.store.claim(row.delivery.key, this.#ports.realNow());
    const outcome = await this.#send(row);
    if (this.#closed) return;
    this.#lanes.rest(laneOf(row.delivery.target), this.#later(this.#pacing.spacingMs));
    if (!this.#book(row, outcome)) await this.#settle(row, this.#pacing.settleMs);
  }

  async #send(row: OutboxRow): Promise<Outcome> {
    try {
      return await this.#ports.sender.send(row);
    } catch (error) {
      return { kind: 'unknown', reason: String(error) };
    }
  }

  /** Writes the outcome down; false when it is not known, or when writing it failed. */
  #book(row: OutboxRow, outcome: Outcome): boolean {
    const { store, log } = this.#ports;
    const key = row.delivery.key;
    try {
      switch (outcome.kind) {
        case 'sent':
          store.sent(key, this.#ports.realNow(), { channel: outcome.channel, ts: outcome.ts });
          return true;
        case 'refused':
          store.refused(key, this.#ports.realNow(), outcome.reason);
          log.error({ key, reason: outcome.reason }, 'The chat platform refused a message for good; it stands on the local page only.');
          return true;
        case 'failed':
          store.retry(key, this.#later(this.#pacing.backoff(row.attempts + 1)), outcome.reason);
          log.warn({ key, reason: outcome.reason }, 'A message was not sent; it is tried again.');
          return true;
        case 'not-yet':
          store.retry(key, this.#later(this.#pacing.backoff(row.attempts + 1)), 'belongs to something that is not sent yet');
          return true;
        case 'limited': {
          const until = this.#later(outcome.retryAfterSeconds * 1_000);
          this.#lanes.rest(laneOf(row.delivery.target), until);
          store.retry(key, until, `asked to wait ${outcome.retryAfterSeconds} s`);
          return true;
        }
        case 'unknown':
          log.warn({ key, reason: outcome.reason }, 'Nobody knows whether a message was sent; it is looked up.');
          return false;
      }
    } catch (error) {
      log.error({ error, key }, 'The outcome of a delivery could not be written down; it is looked up.');
      return false;
    }
  }

  /** Asks the platform until it can tell, or until this process ends. */
  async #settle(row: OutboxRow, firstPauseMs: number): Promise<void> {
    let pause = firstPauseMs;
    for (let attempt = 1; ; attempt += 1) {
      if (!(await this.#pause(pause))) return;
      const finding = await this.#find(row);
      if (this.#closed || this.#bookFinding(row, finding)) return;
      pause = this.#pacing.backoff(attempt);
    }
  }

  async #find(row: OutboxRow): Promise<Finding> {
    try {
      return await this.#ports.sender.find(row);
    } catch (error) {
      return { kind: 'cannot-tell', reason: String(error) };
    }
  }

  #bookFinding(row: OutboxRow, finding: Finding): boolean {
    switch (finding.kind) {
      case 'found':
        return this.#book(row, { ...finding, kind: 'sent' });
      case 'never-told':
        return this.#book(row, { kind: 'refused', reason: finding.reason });
      case 'absent':
        return this.#book(row, { kind: 'failed', reason: 'looked up: it is not there' });
      case 'cannot-tell':
        this.#ports.log.warn({ key: row.delivery.key, reason: finding.reason }, 'A message could not be looked up; its lane waits.');
        return false;
    }
  }

  /** False when the dispatcher closes: nothing new is begun then. */
  async #pause(ms: number): Promise<boolean> {
    if (ms > 0) await wait(ms, undefined, { signal: this.#closing.signal }).catch(() => undefined);
    return !this.#closing.signal.aborted;
  }

  /** Real time at the start plus what has passed since: a computer clock that is put right must not stop a lane for an hour. */
  #now(): Instant {
    return instant(this.#began + performance.now());
  }

  #later(ms: number): Instant {
    return instant(Math.ceil(this.#now() + ms));
  }
}
