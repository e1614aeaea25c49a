import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { FORM_CALLBACK } from '../../../src/chat/slack/form-fields.js';
import { ROOT, sourceFiles } from '../../support/source-files.js';

const url = z.url({ protocol: /^https$/ });
const manifestSchema = z.object({
  features: z.object({
    app_home: z.object({ home_tab_enabled: z.literal(true), messages_tab_enabled: z.literal(true), messages_tab_read_only_enabled: z.literal(false) }),
    shortcuts: z.array(z.object({ type: z.literal('global'), callback_id: z.string(), name: z.string().max(24), description: z.string().max(150) })),
    slash_commands: z.array(z.object({ command: z.string(), url: url.optional(), should_escape: z.literal(true) })),
  }),
  oauth_config: z.object({ scopes: z.object({ bot: z.array(z.string()) }) }),
  settings: z.object({
    event_subscriptions: z.object({ request_url: url.optional(), bot_events: z.array(z.string()) }),
    interactivity: z.object({ is_enabled: z.literal(true), request_url: url.optional() }),
    socket_mode_enabled: z.boolean(),
  }),
});

/** The scopes each call needs, as the platform's method pages name them; `auth.test` needs none. */
const SCOPES_OF_CALLS: Readonly<Record<string, readonly string[]>> = {
  'auth.test': [],
  'views.open': [],
  'views.update': [],
  'views.publish': [],
  'conversations.open': ['im:write'],
  'chat.postMessage': ['chat:write'],
  'chat.update': ['chat:write'],
  'chat.postEphemeral': ['chat:write'],
  'conversations.history': ['channels:history', 'groups:history', 'im:history'],
  'conversations.replies': ['channels:history', 'groups:history', 'im:history'],
  'users.info': ['users:read'],
};
/** What is received needs these. */
const SCOPES_OF_EVENTS = ['commands', 'app_mentions:read', 'im:history', 'channels:history', 'groups:history'];

const read = (mode: string) => manifestSchema.parse(parse(readFileSync(join(ROOT, 'deploy', `slack-manifest-${mode}.yaml`), 'utf8')));

function callsInSource(): string[] {
  const text = sourceFiles('src/chat/slack').map((file) => file.text).join('\n');
  return [...new Set([...text.matchAll(/client\.((?:auth|chat|conversations|users|views)\.\w+)\(/g)].map((found) => found[1] ?? ''))];
}

describe.each(['http', 'socket'])('the app manifest for mode %s', (mode) => {
  it('asks for exactly the scopes that the calls and events of the program need', () => {
    const calls = callsInSource();
    expect(calls.sort()).toEqual(Object.keys(SCOPES_OF_CALLS).sort());
    const needed = [...new Set([...calls.flatMap((call) => SCOPES_OF_CALLS[call] ?? []), ...SCOPES_OF_EVENTS])];
    expect(read(mode).oauth_config.scopes.bot.sort()).toEqual(needed.sort());
  });

  it('subscribes to what is listened to, and nothing twice', () => {
    expect(read(mode).settings.event_subscriptions.bot_events).toEqual(['app_home_opened', 'app_mention', 'message.channels', 'message.groups', 'message.im']);
  });

  it('has the shortcut of the form', () => {
    expect(read(mode).features.shortcuts.map((shortcut) => shortcut.callback_id)).toEqual([FORM_CALLBACK]);
  });

  it('has the one command', () => {
    expect(read(mode).features.slash_commands.map((command) => command.command)).toEqual(['/cure']);
  });
});

describe('the two app manifests', () => {
  it('differ in how the platform reaches the program: by address or over the WebSocket', () => {
    const [http, socket] = [read('http'), read('socket')];
    const addresses = ({ features, settings }: typeof http) => [features.slash_commands[0]?.url, settings.event_subscriptions.request_url, settings.interactivity.request_url];
    expect([http.settings.socket_mode_enabled, socket.settings.socket_mode_enabled]).toEqual([false, true]);
    expect(new Set(addresses(http)).size).toBe(1);
    expect(http.settings.event_subscriptions.request_url).toMatch(/\/slack\/events$/);
    expect(addresses(socket)).toEqual([undefined, undefined, undefined]);
  });
});
