import { checkPost } from './check-post.js';
import { BOT_USER } from './payloads.js';

/** A message that stands on the stand-in. */
export interface StandingMessage {
  readonly channel: string;
  readonly ts: string;
  /** Null at the top level of the channel. */
  readonly thread: string | null;
  readonly text: string;
  readonly blocks: readonly unknown[];
  readonly metadata: unknown;
}

/** A message shown to one person only; the platform keeps no trace of it. */
export interface ShownMessage {
  readonly channel: string;
  readonly user: string;
  readonly thread: string | null;
  readonly text: string;
  readonly blocks: readonly unknown[];
}

type Args = Readonly<Record<string, string>>;
export type ApiAnswer = Readonly<Record<string, unknown>>;

const no = (error: string): ApiAnswer => ({ ok: false, error });

/** Channels and messages of the stand-in, with the methods of the Web API that touch them. */
export class Room {
  readonly messages: StandingMessage[] = [];
  readonly shown: ShownMessage[] = [];
  /** Names by chat id, for users.info. */
  readonly users = new Map<string, string>();
  /** Channels where the bot is not a member. */
  readonly barred = new Set<string>();
  #lastMicros = 0;

  answer(method: string, args: Args): ApiAnswer {
    switch (method) {
      case 'auth.test':
        return { ok: true, url: 'http://127.0.0.1/', team: 'Shop', user: 'clerk', team_id: 'T0SHOP', user_id: BOT_USER, bot_id: 'B0BOT' };
      case 'chat.postMessage':
        return this.#post(args);
      case 'chat.update':
        return this.#update(args);
      case 'chat.postEphemeral':
        return this.#show(args);
      case 'conversations.history':
        return this.#page(this.messages.filter((one) => one.channel === args['channel'] && one.thread === null).reverse(), args);
      case 'conversations.replies':
        return this.#replies(args);
      case 'conversations.open':
        return { ok: true, channel: { id: `D${(args['users'] ?? '').slice(1)}` } };
      case 'users.info':
        return this.#user(args['user'] ?? '');
      default:
        return no('unknown_method');
    }
  }

  #post(args: Args): ApiAnswer {
    const asked = args['channel'] ?? '';
    if (this.barred.has(asked)) return no('not_in_channel');
    const blocks = list(args['blocks']);
    const fault = checkPost(args, blocks);
    if (fault !== null) return no(fault);
    // Posting to a person opens the direct messages with them.
    const channel = asked.startsWith('U') ? `D${asked.slice(1)}` : asked;
    const message = { channel, ts: this.#ts(), thread: args['thread_ts'] ?? null, text: args['text'] ?? '', blocks, metadata: parsed(args['metadata']) };
    this.messages.push(message);
    return { ok: true, channel, ts: message.ts, message: { text: message.text } };
  }

  /** Text without blocks removes the blocks; metadata that is not given stays. */
  #update(args: Args): ApiAnswer {
    const place = this.messages.findIndex((one) => one.channel === args['channel'] && one.ts === args['ts']);
    const before = this.messages[place];
    if (before === undefined) return no('message_not_found');
    const blocks = list(args['blocks']);
    const fault = checkPost(args, blocks);
    if (fault !== null) return no(fault);
    const text = args['text'] ?? '';
    this.messages[place] = { ...before, text, blocks, metadata: args['metadata'] === undefined ? before.metadata : parsed(args['metadata']) };
    return { ok: true, channel: before.channel, ts: before.ts, text };
  }

  #show(args: Args): ApiAnswer {
    const channel = args['channel'] ?? '';
    if (this.barred.has(channel)) return no('channel_not_found');
    const blocks = list(args['blocks']);
    const fault = checkPost(args, blocks);
    if (fault !== null) return no(fault);
    this.shown.push({ channel, user: args['user'] ?? '', thread: args['thread_ts'] ?? null, text: args['text'] ?? '', blocks });
    return { ok: true, message_ts: this.#ts() };
  }

  #replies(args: Args): ApiAnswer {
    const inChannel = this.messages.filter((one) => one.channel === args['channel']);
    if (!inChannel.some((one) => one.ts === args['ts'])) return no('thread_not_found');
    return this.#page(inChannel.filter((one) => one.ts === args['ts'] || one.thread === args['ts']), args);
  }

  #page(all: readonly StandingMessage[], args: Args): ApiAnswer {
    if (this.barred.has(args['channel'] ?? '')) return no('not_in_channel');
    const start = Number(args['cursor'] ?? '0');
    const end = start + Number(args['limit'] ?? '100');
    const withMetadata = args['include_all_metadata'] === 'true';
    const messages = all.slice(start, end).map(({ ts, thread, text, metadata }) => ({
      type: 'message',
      ts,
      text,
      ...(thread === null ? {} : { thread_ts: thread }),
      ...(withMetadata && metadata !== null ? { metadata } : {}),
    }));
    return { ok: true, messages, has_more: end < all.length, response_metadata: { next_cursor: end < all.length ? String(end) : '' } };
  }

  #user(id: string): ApiAnswer {
    const name = this.users.get(id);
    return name === undefined ? no('user_not_found') : { ok: true, user: { id, name: name.toLowerCase(), real_name: name, profile: { display_name: '' } } };
  }

  #ts(): string {
    this.#lastMicros = Math.max(Date.now() * 1_000, this.#lastMicros + 1);
    return `${Math.floor(this.#lastMicros / 1_000_000)}.${String(this.#lastMicros % 1_000_000).padStart(6, '0')}`;
  }
}

function parsed(text: string | undefined): unknown {
  const value: unknown = text === undefined ? null : JSON.parse(text);
  return value;
}

function list(text: string | undefined): unknown[] {
  const value = parsed(text);
  return Array.isArray(value) ? value : [];
}
