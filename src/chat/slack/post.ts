import { z } from 'zod';
import type { webApi } from '@slack/bolt';
import type { Outcome, Receipt } from '../../outbox/chat-sender.js';
import { markOf } from './delivery-mark.js';
import type { Place } from './look-up.js';
import { errorWord, outcomeOf } from './outcome-of.js';
import type { SlackBlock } from './to-blocks.js';

/** A message ready for the platform: `text` is complete alone, `blocks` show the same. */
export interface Content {
  readonly text: string;
  readonly blocks: readonly SlackBlock[];
}

/** The platform finds fault with the blocks; the text alone says everything. */
const BLOCK_TROUBLE: ReadonlySet<string> = new Set(['invalid_blocks', 'invalid_blocks_format', 'msg_blocks_too_long']);

const postedSchema = z.object({ channel: z.string().min(1), ts: z.string().min(1) });
const shownSchema = z.object({ message_ts: z.string().min(1) });

/** Posts a message that everybody there can read. Never throws. */
export async function post(client: webApi.WebClient, place: Place, content: Content, key: string): Promise<Outcome> {
  return withoutBlocksIfNeeded(content, async ({ text, blocks }) => {
    const common = { channel: place.channel, text, blocks: [...blocks], metadata: markOf(key), unfurl_links: false, unfurl_media: false };
    const answer = await client.chat.postMessage(place.thread === null ? common : { ...common, thread_ts: place.thread });
    return { kind: 'sent', ...postedSchema.parse(answer) };
  });
}

/** Puts other content in the place of a message of our own. Doing it twice changes nothing; nobody is notified. Never throws. */
export async function edit(client: webApi.WebClient, { channel, ts }: Receipt, content: Content, key: string): Promise<Outcome> {
  return withoutBlocksIfNeeded(content, async ({ text, blocks }) => {
    await client.chat.update({ channel, ts, text, blocks: [...blocks], metadata: markOf(key) });
    return { kind: 'sent', channel, ts };
  });
}

/** Shows a message to one person only. It leaves no trace on the platform, so it cannot be looked up. Never throws. */
export async function show(client: webApi.WebClient, place: Place, user: string, content: Content): Promise<Outcome> {
  return withoutBlocksIfNeeded(content, async ({ text, blocks }) => {
    const common = { channel: place.channel, user, text, blocks: [...blocks] };
    const answer = await client.chat.postEphemeral(place.thread === null ? common : { ...common, thread_ts: place.thread });
    return { kind: 'sent', channel: place.channel, ts: shownSchema.parse(answer).message_ts };
  });
}

async function withoutBlocksIfNeeded(content: Content, call: (content: Content) => Promise<Outcome>): Promise<Outcome> {
  try {
    return await call(content);
  } catch (error) {
    if (content.blocks.length > 0 && BLOCK_TROUBLE.has(errorWord(error) ?? '')) return withoutBlocksIfNeeded({ ...content, blocks: [] }, call);
    return outcomeOf(error);
  }
}
