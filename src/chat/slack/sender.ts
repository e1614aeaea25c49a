import type { webApi } from '@slack/bolt';
import type { Delivery } from '../../clerk/message.js';
import type { OutboxRow, OutboxStore } from '../../clerk/ports.js';
import type { Instant } from '../../cure/units.js';
import type { ChatSender, Finding, Outcome, Receipt } from '../../outbox/chat-sender.js';
import type { JobNo } from '../../repair/ids.js';
import { headKey } from './delivery-mark.js';
import { headContent } from './head-content.js';
import { lookUp, lookUpDirect } from './look-up.js';
import type { Place } from './look-up.js';
import { ACCOUNT_TROUBLE, PLACE_TROUBLE, THREAD_TROUBLE } from './outcome-of.js';
import { edit, post, show } from './post.js';
import type { Content } from './post.js';
import { toBlocks } from './to-blocks.js';
import { toText } from './to-text.js';
import { refusedWords } from './trouble-words.js';

export interface SenderPorts {
  /** With a time limit, without retries of its own: a retry inside the client would post twice. */
  readonly client: webApi.WebClient;
  readonly outbox: OutboxStore;
  /** The home channel's id. */
  readonly home: string;
  readonly realNow: () => Instant;
  /** Told what keeps messages in: trouble with the account, or with the home channel; null when one got out. */
  readonly report: (part: 'sending' | 'home', trouble: string | null) => void;
}

/** An ephemeral message whose outcome nobody knows is given up: it cannot be looked up, and twice would be a lie. */
const UNKNOWN_EPHEMERAL = 'unknown, ephemeral';

/** Puts deliveries onto the platform and finds out about those whose answer was lost. */
export class SlackSender implements ChatSender {
  readonly #ports: SenderPorts;

  constructor(ports: SenderPorts) {
    this.#ports = ports;
  }

  async send(row: OutboxRow): Promise<Outcome> {
    const { delivery } = row;
    const outcome = await this.#sendTo(delivery, { text: toText(delivery.answer, delivery.mention), blocks: toBlocks(delivery.answer, delivery.mention) });
    return this.#judged(delivery, outcome);
  }

  async find(row: OutboxRow): Promise<Finding> {
    const { target, key } = row.delivery;
    const { client, home } = this.#ports;
    switch (target.kind) {
      case 'only-for':
        return { kind: 'never-told', reason: UNKNOWN_EPHEMERAL };
      case 'edit':
      case 'thread-head':
        // Doing it again does no harm.
        return { kind: 'absent' };
      case 'channel':
        return lookUp(client, target, key);
      case 'direct':
        return lookUpDirect(client, target.user, key);
      case 'home-channel':
        return lookUp(client, { channel: home, thread: null }, key);
      case 'job-thread': {
        const thread = await this.#findThread(target.job);
        if ('kind' in thread) return thread;
        const inThread = await lookUp(client, thread, key);
        return inThread.kind === 'absent' ? lookUp(client, { channel: home, thread: null }, key) : inThread;
      }
    }
  }

  async #sendTo({ target, key }: Delivery, content: Content): Promise<Outcome> {
    const { client, home } = this.#ports;
    switch (target.kind) {
      case 'only-for':
        return this.#showTo(target, target.user, content, key);
      case 'edit':
        return this.#editThere(this.#ports.outbox.receiptOf(target.of), content, target.of);
      case 'thread-head':
        return this.#editThere(this.#ports.outbox.threadOf(target.job) ?? 'waiting', content, headKey(target.job));
      case 'channel':
        return post(client, target, content, key);
      case 'direct':
        return post(client, { channel: target.user, thread: null }, content, key);
      case 'home-channel':
        return post(client, { channel: home, thread: null }, content, key);
      case 'job-thread': {
        const thread = await this.#openThread(target.job);
        if ('kind' in thread) return thread;
        const outcome = await post(client, thread, content, key);
        const unthreaded = outcome.kind === 'refused' && THREAD_TROUBLE.has(outcome.reason);
        return unthreaded ? post(client, { channel: home, thread: null }, content, key) : outcome;
      }
    }
  }

  async #editThere(where: Receipt | 'waiting' | null, content: Content, key: string): Promise<Outcome> {
    if (where === 'waiting') return { kind: 'not-yet' };
    return where === null ? { kind: 'refused', reason: 'what it belongs to was never sent' } : edit(this.#ports.client, where, content, key);
  }

  /** Somebody may type a command where the bot is no member; the answer then goes to their direct messages. */
  async #showTo(place: Place, user: string, content: Content, key: string): Promise<Outcome> {
    const shown = await show(this.#ports.client, place, user, content);
    const barred = shown.kind === 'refused' && (PLACE_TROUBLE.has(shown.reason) || shown.reason === 'user_not_in_channel');
    const outcome = barred ? await post(this.#ports.client, { channel: user, thread: null }, content, key) : shown;
    return outcome.kind === 'unknown' ? { kind: 'refused', reason: UNKNOWN_EPHEMERAL } : outcome;
  }

  /** The job's thread in the home channel; posts its head when there is none yet. */
  async #openThread(job: JobNo): Promise<Place | Exclude<Outcome, { kind: 'sent' }>> {
    const known = this.#knownThread(job);
    if (known !== null) return known;
    const head = await post(this.#ports.client, { channel: this.#ports.home, thread: null }, headContent(job), headKey(job));
    return head.kind === 'sent' ? this.#keepThread(job, head) : head;
  }

  /** The job's thread, also when only its head got out and the receipt was lost. */
  async #findThread(job: JobNo): Promise<Place | Exclude<Finding, { kind: 'found' }>> {
    const known = this.#knownThread(job);
    if (known !== null) return known;
    const head = await lookUp(this.#ports.client, { channel: this.#ports.home, thread: null }, headKey(job));
    return head.kind === 'found' ? this.#keepThread(job, head) : head;
  }

  #knownThread(job: JobNo): Place | null {
    const known = this.#ports.outbox.threadOf(job);
    return known === null ? null : { channel: known.channel, thread: known.ts };
  }

  #keepThread(job: JobNo, { channel, ts }: { readonly channel: string; readonly ts: string }): Place {
    this.#ports.outbox.saveThread(job, this.#ports.realNow(), { channel, ts });
    return { channel, thread: ts };
  }

  /** Trouble with the home channel or the account is repaired by people; until then the message waits. */
  #judged(delivery: Delivery, outcome: Outcome): Outcome {
    const { home, report } = this.#ports;
    const homeward = delivery.target.kind === 'job-thread' || delivery.target.kind === 'home-channel';
    if (outcome.kind === 'sent') {
      report('sending', null);
      if (homeward) report('home', null);
    }
    if (outcome.kind === 'failed' && ACCOUNT_TROUBLE.has(outcome.reason)) report('sending', refusedWords(outcome.reason));
    if (!homeward || outcome.kind !== 'refused' || !PLACE_TROUBLE.has(outcome.reason)) return outcome;
    report('home', `The platform says "${outcome.reason}": invite the bot to the home channel ${home}, or correct its id in the settings.`);
    return { kind: 'failed', reason: outcome.reason };
  }
}
