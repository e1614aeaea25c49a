import { z } from 'zod';
import type { webApi } from '@slack/bolt';
import type { Finding } from '../../outbox/chat-sender.js';
import { keyIn } from './delivery-mark.js';
import { errorWord } from './outcome-of.js';
import { why } from './why.js';

const PAGE = 200;
/** What was sent a moment ago stands among the newest messages; 25 pages are 5,000 of them. */
const PAGES = 25;
/** A thread whose head was deleted holds nothing any more. */
const GONE: ReadonlySet<string> = new Set(['thread_not_found', 'message_not_found']);

const pageSchema = z.object({
  messages: z.array(z.object({ ts: z.string(), metadata: z.unknown().optional() })).default([]),
  response_metadata: z.object({ next_cursor: z.string().optional() }).optional(),
});

/** Where to look: a whole channel (its top level), or one thread of it. */
export interface Place {
  readonly channel: string;
  readonly thread: string | null;
}

/** Looks for the message that carries `key`; never throws. */
export async function lookUp(client: webApi.WebClient, place: Place, key: string): Promise<Finding> {
  try {
    let cursor: string | undefined;
    for (let page = 0; page < PAGES; page += 1) {
      const { messages, response_metadata } = pageSchema.parse(await fetchPage(client, place, cursor));
      const found = messages.find((message) => keyIn(message.metadata) === key);
      if (found !== undefined) return { kind: 'found', channel: place.channel, ts: found.ts };
      cursor = response_metadata?.next_cursor;
      if (cursor === undefined || cursor === '') break;
    }
    return { kind: 'absent' };
  } catch (error) {
    const word = errorWord(error);
    return word !== null && GONE.has(word) ? { kind: 'absent' } : { kind: 'cannot-tell', reason: word ?? why(error) };
  }
}

const openedSchema = z.object({ channel: z.object({ id: z.string().min(1) }) });

/** The same in the direct messages with a person; never throws. */
export async function lookUpDirect(client: webApi.WebClient, user: string, key: string): Promise<Finding> {
  try {
    const { channel } = openedSchema.parse(await client.conversations.open({ users: user }));
    return await lookUp(client, { channel: channel.id, thread: null }, key);
  } catch (error) {
    return { kind: 'cannot-tell', reason: errorWord(error) ?? why(error) };
  }
}

function fetchPage(client: webApi.WebClient, place: Place, cursor: string | undefined): Promise<unknown> {
  const common = { channel: place.channel, limit: PAGE, include_all_metadata: true, ...(cursor === undefined ? {} : { cursor }) };
  if (place.thread === null) return client.conversations.history(common);
  return client.conversations.replies({ ...common, ts: place.thread });
}
