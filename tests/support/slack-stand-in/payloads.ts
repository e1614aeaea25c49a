import { createHmac } from 'node:crypto';

/** Everything in a payload that a test may want to choose; the rest is filled in. */
export interface CommandChoice {
  readonly text: string;
  readonly user?: string;
  readonly userName?: string;
  readonly channel?: string;
  readonly triggerId?: string;
}

export interface PressChoice {
  /** The button's value. */
  readonly line: string;
  readonly actionId?: string;
  readonly channel?: string;
  readonly user?: string;
  readonly userName?: string;
  readonly messageTs?: string;
  readonly threadTs?: string;
  readonly actionTs?: string;
  readonly ephemeral?: boolean;
}

export interface EventChoice {
  readonly text: string;
  readonly user?: string;
  readonly channel?: string;
  readonly ts?: string;
  readonly threadTs?: string;
  readonly eventId?: string;
  /** Further fields of the inner event, such as `subtype` or `bot_id`. */
  readonly more?: Readonly<Record<string, unknown>>;
}

export const BOT_USER = 'U0BOT';
const TEAM = 'T0SHOP';
let counter = 0;
const next = (): number => (counter += 1);
const aTs = (): string => `1700000000.${String(next()).padStart(6, '0')}`;

/** Opens one view within three seconds; the time of its making is in it. */
export const newTrigger = (): string => `trigger-${Date.now()}-${next()}`;

/** Form fields of a slash command `/cure`. */
export function commandPayload(choice: CommandChoice): Record<string, string> {
  return {
    command: '/cure',
    text: choice.text,
    user_id: choice.user ?? 'U1',
    user_name: choice.userName ?? 'anna',
    channel_id: choice.channel ?? 'C0HOME',
    team_id: TEAM,
    trigger_id: choice.triggerId ?? newTrigger(),
    response_url: 'http://127.0.0.1:9/unused',
    is_enterprise_install: 'false',
  };
}

/** A pressed button, as `block_actions`. */
export function pressPayload(choice: PressChoice): Record<string, unknown> {
  const channel = choice.channel ?? 'C0HOME';
  const ts = choice.messageTs ?? aTs();
  const thread = choice.threadTs === undefined ? {} : { thread_ts: choice.threadTs };
  const ephemeral = choice.ephemeral ?? false;
  return {
    type: 'block_actions',
    team: { id: TEAM },
    user: { id: choice.user ?? 'U1', username: choice.userName ?? 'anna', name: choice.userName ?? 'anna' },
    channel: { id: channel, name: 'bonding' },
    container: { type: 'message', message_ts: ts, channel_id: channel, is_ephemeral: ephemeral, ...thread },
    ...(ephemeral ? {} : { message: { type: 'message', ts, ...thread } }),
    actions: [{ type: 'button', action_id: choice.actionId ?? 'press-0', block_id: 'b1', value: choice.line, action_ts: choice.actionTs ?? aTs() }],
    trigger_id: newTrigger(),
  };
}

/** Somebody names the bot in a channel; write `<@U0BOT>` into the text yourself. */
export function mentionPayload(choice: EventChoice): Record<string, unknown> {
  return eventPayload(choice, { type: 'app_mention', channel: choice.channel ?? 'C0HOME' });
}

/** Somebody writes to the bot directly. */
export function directPayload(choice: EventChoice): Record<string, unknown> {
  return eventPayload(choice, { type: 'message', channel_type: 'im', channel: choice.channel ?? 'D0ANNA' });
}

/** Somebody writes into a thread of a channel, and names nobody. */
export function threadPayload(choice: EventChoice & { readonly threadTs: string }): Record<string, unknown> {
  return eventPayload(choice, { type: 'message', channel_type: 'channel', channel: choice.channel ?? 'C0HOME' });
}

function eventPayload(choice: EventChoice, inner: Record<string, unknown>): Record<string, unknown> {
  return {
    type: 'event_callback',
    team_id: TEAM,
    api_app_id: 'A0CLERK',
    event_id: choice.eventId ?? `Ev${next()}`,
    event_time: 1_700_000_000,
    authorizations: [{ team_id: TEAM, user_id: BOT_USER, is_bot: true }],
    event: {
      ...inner,
      user: choice.user ?? 'U1',
      text: choice.text,
      ts: choice.ts ?? aTs(),
      ...(choice.threadTs === undefined ? {} : { thread_ts: choice.threadTs }),
      ...choice.more,
    },
  };
}

/** The signature header of the platform: `v0=` and the HMAC-SHA256 of `v0:timestamp:body`. */
export function signature(secret: string, timestamp: number, body: string): string {
  return `v0=${createHmac('sha256', secret).update(`v0:${timestamp}:${body}`).digest('hex')}`;
}
