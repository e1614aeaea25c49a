import type { types } from '@slack/bolt';
import { z } from 'zod';
import { sayReason } from '../../reply/catalogue/reason.js';
import type { Reader } from '../../reply/catalogue/speaker.js';

/** Begins the action id of a button behind which a reason is written. */
export const ASKS_REASON = 'ask-reason';
export const REASON_CALLBACK = 'give-reason';
/** The one field, and the block it stands in. */
export const REASON_FIELD = 'reason';

const MOST_CHARACTERS = 200;
const HINT_LIMIT = 100;

const placeSchema = z.object({ line: z.string().min(1), channel: z.string().min(1), messageTs: z.string().min(1), thread: z.string().nullable(), ephemeral: z.boolean() });

/** The button that was pressed, and where it stands. */
export type AskedAt = z.infer<typeof placeSchema>;

/** Null: the form was not opened by this program. */
export function askedAt(metadata: string): AskedAt | null {
  try {
    return placeSchema.safeParse(JSON.parse(metadata)).data ?? null;
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}

/** A form with one field, why; what is written there stands behind the button's line. */
export function reasonView({ line, channel, messageTs, thread, ephemeral }: AskedAt, reader: Reader): types.ModalView {
  return {
    type: 'modal',
    callback_id: REASON_CALLBACK,
    private_metadata: JSON.stringify({ line, channel, messageTs, thread, ephemeral } satisfies AskedAt),
    title: plain(sayReason(reader, 'title')),
    submit: plain(sayReason(reader, 'send')),
    close: plain(sayReason(reader, 'cancel')),
    blocks: [
      {
        type: 'input',
        block_id: REASON_FIELD,
        label: plain(sayReason(reader, 'why')),
        hint: plain(sayReason(reader, 'stands', { line: line.slice(0, HINT_LIMIT) })),
        element: { type: 'plain_text_input', action_id: REASON_FIELD, max_length: MOST_CHARACTERS },
      },
    ],
  };
}

const plain = (text: string): types.PlainTextElement => ({ type: 'plain_text', text, emoji: false });
