import { z } from 'zod';
import { isInView, readShortcut, readSubmission, readViewAction } from './incoming-view.js';
import type { IncomingView } from './incoming-view.js';
import { ASKS_REASON } from './reason-view.js';

const id = z.string().min(1);

const commandBody = z.object({
  command: id,
  text: z.string().default(''),
  user_id: id,
  user_name: z.string().optional(),
  channel_id: id,
  trigger_id: id,
});

const actionBody = z.object({
  type: z.literal('block_actions'),
  user: z.object({ id, name: z.string().optional(), username: z.string().optional() }),
  channel: z.object({ id }),
  container: z.object({ message_ts: id, thread_ts: id.optional(), is_ephemeral: z.boolean().default(false) }),
  message: z.object({ thread_ts: id.optional() }).optional(),
  trigger_id: z.string().default(''),
  actions: z.array(z.object({ action_ts: id, action_id: z.string().default(''), value: z.string().optional() })).min(1),
});

const eventBody = z.object({
  type: z.literal('event_callback'),
  event_id: id,
  authorizations: z.array(z.object({ user_id: id.nullish() })).optional(),
  event: z.object({
    type: id,
    channel_type: z.string().optional(),
    tab: z.string().optional(),
    subtype: z.string().optional(),
    bot_id: z.string().nullish(),
    user: id.optional(),
    text: z.string().optional(),
    channel: z.unknown().optional(),
    ts: id.optional(),
    thread_ts: id.optional(),
  }),
});

const said = z.object({ user: id, text: z.string(), channel: id, ts: id, thread_ts: id.optional() });

/** A mention, a direct message, or what was written into a thread, as it is kept until it has been handled. */
export const heardSchema = z.object({
  id,
  how: z.enum(['mention', 'direct', 'thread']),
  user: id,
  text: z.string(),
  channel: id,
  ts: id,
  thread: id.nullable(),
  /** The bot as the platform names it in the event, if it does. */
  bot: id.nullable(),
});
export type Heard = z.infer<typeof heardSchema>;

export interface Typed {
  readonly triggerId: string;
  readonly user: string;
  readonly userName: string | null;
  readonly channel: string;
  readonly text: string;
}

export interface Pressed {
  readonly user: string;
  readonly userName: string | null;
  readonly channel: string;
  readonly messageTs: string;
  readonly thread: string | null;
  readonly ephemeral: boolean;
  readonly actionTs: string;
  readonly line: string;
}

/** A button behind which a reason is written; `triggerId` opens one form, within three seconds. */
export interface ReasonWanted {
  readonly triggerId: string;
  readonly pressed: Pressed;
}

export type Incoming =
  | IncomingView
  | { readonly kind: 'home-opened'; readonly user: string }
  | { readonly kind: 'typed'; readonly typed: Typed }
  | { readonly kind: 'pressed'; readonly pressed: Pressed }
  | { readonly kind: 'reason-wanted'; readonly wanted: ReasonWanted }
  | { readonly kind: 'heard'; readonly heard: Heard }
  /** Well-formed, but nothing the clerk listens to: own echoes, edits, other event types. */
  | { readonly kind: 'not-for-us'; readonly what: string }
  | { readonly kind: 'malformed'; readonly problem: string };

/** Sorts one verified payload of the platform; never throws. */
export function readIncoming(body: Readonly<Record<string, unknown>>): Incoming {
  if ('command' in body) return readCommand(body);
  if (body['type'] === 'block_actions') return isInView(body) ? readViewAction(body) : readAction(body);
  if (body['type'] === 'shortcut') return readShortcut(body);
  if (body['type'] === 'view_submission') return readSubmission(body);
  if (body['type'] === 'event_callback') return readEvent(body);
  return typeof body['type'] === 'string' ? { kind: 'not-for-us', what: body['type'] } : malformed('neither a command nor a typed payload');
}

function malformed(problem: string): Incoming {
  return { kind: 'malformed', problem };
}

function readCommand(body: unknown): Incoming {
  const read = commandBody.safeParse(body);
  if (!read.success) return malformed(z.prettifyError(read.error));
  const { trigger_id, user_id, user_name, channel_id, text } = read.data;
  return { kind: 'typed', typed: { triggerId: trigger_id, user: user_id, userName: user_name ?? null, channel: channel_id, text } };
}

function readAction(body: unknown): Incoming {
  const read = actionBody.safeParse(body);
  if (!read.success) return malformed(z.prettifyError(read.error));
  const { user, channel, container, message, trigger_id: triggerId, actions } = read.data;
  const [action] = actions;
  if (action?.value === undefined) return malformed('a button without a value');
  const pressed: Pressed = {
    user: user.id,
    userName: user.name ?? user.username ?? null,
    channel: channel.id,
    messageTs: container.message_ts,
    thread: message?.thread_ts ?? container.thread_ts ?? null,
    ephemeral: container.is_ephemeral,
    actionTs: action.action_ts,
    line: action.value,
  };
  return action.action_id.startsWith(ASKS_REASON) ? { kind: 'reason-wanted', wanted: { triggerId, pressed } } : { kind: 'pressed', pressed };
}

function readEvent(body: unknown): Incoming {
  const read = eventBody.safeParse(body);
  if (!read.success) return malformed(z.prettifyError(read.error));
  const { event, event_id, authorizations } = read.data;
  if (event.type === 'app_home_opened' && event.user !== undefined && event.tab === 'home') return { kind: 'home-opened', user: event.user };
  const how = howHeard(event);
  // The bot's own edits come back without a user; everything with a subtype or a bot id is an echo or an edit.
  if (how === null || event.subtype !== undefined || typeof event.bot_id === 'string') return { kind: 'not-for-us', what: `${event.type} ${event.subtype ?? ''}`.trim() };
  const words = said.safeParse(event);
  if (!words.success) return malformed(z.prettifyError(words.error));
  const { thread_ts, ...rest } = words.data;
  return { kind: 'heard', heard: { id: event_id, how, ...rest, thread: thread_ts ?? null, bot: authorizations?.[0]?.user_id ?? null } };
}

function howHeard({ type, channel_type: place, thread_ts: thread }: z.infer<typeof eventBody>['event']): Heard['how'] | null {
  if (type === 'app_mention') return 'mention';
  if (type !== 'message') return null;
  if (place === 'im') return 'direct';
  return thread !== undefined && (place === 'channel' || place === 'group') ? 'thread' : null;
}
