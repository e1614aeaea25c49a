import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { Day } from './day.js';
import { tempFolder } from './program.js';
import { SlackStandIn, STAND_IN_APP_TOKEN, STAND_IN_BOT_TOKEN } from './slack-stand-in.js';
import { overHttp, type OverHttp } from './slack-stand-in/over-http.js';
import { commandPayload, pressPayload } from './slack-stand-in/payloads.js';
import type { StandingMessage } from './slack-stand-in/room.js';
import { until } from './slack-stand-in/until.js';

const SECRET = 'a-signing-secret-of-our-own';

/** Chat ids on the stand-in: the example shop's people, and two who are on the list of some tests only. */
export const CHAT_IDS = { ines: 'U0INES', tomek: 'U0TOMEK', wren: 'U0WREN', ana: 'U0ANA', mo: 'U0MO' } as const;

/** A day in the example shop, with the built program talking real protocol to a stand-in of the platform. */
export interface SlackDay {
  readonly day: Day;
  readonly platform: SlackStandIn;
  readonly http: () => OverHttp;
  /** `/cure TEXT` by HTTP; the answer is acknowledged within 3 s. */
  readonly cure: (user: string, text: string) => Promise<void>;
  /** Presses a button of a standing message by HTTP. */
  readonly press: (user: string, message: StandingMessage, label: string) => Promise<void>;
  /** Waits for a message with these words in the home channel. */
  readonly heard: (words: RegExp) => Promise<StandingMessage>;
  readonly said: (words: RegExp) => StandingMessage[];
}

export async function slackDay(mode: 'http' | 'socket', start: string, shop = shopWithChatIds()): Promise<SlackDay> {
  const platform = await SlackStandIn.open();
  onTestFinished(() => platform.close());
  const day = await Day.begin(start, {
    CURECLERK_SHOP: shop,
    SLACK_BOT_TOKEN: STAND_IN_BOT_TOKEN,
    SLACK_API_URL: platform.apiUrl,
    SLACK_CHANNEL: 'C0HOME',
    ...(mode === 'http' ? { SLACK_SIGNING_SECRET: SECRET } : { SLACK_APP_TOKEN: STAND_IN_APP_TOKEN }),
  });
  const http = (): OverHttp => overHttp(`${day.program.url}/slack/events`, SECRET);
  const said = (words: RegExp): StandingMessage[] => platform.room.messages.filter((message) => words.test(message.text));
  const acknowledged = ({ status, tookMs }: { status: number; tookMs: number }): void => {
    if (status !== 200 || tookMs > 3_000) throw new Error(`answered ${status} after ${tookMs} ms`);
  };
  return {
    day,
    platform,
    http,
    said,
    cure: async (user, text) => { acknowledged(await http().command(commandPayload({ text, user, userName: user.toLowerCase() }))); },
    press: async (user, message, label) => {
      acknowledged(await http().action(pressPayload({ line: buttonLine(message, label), user, userName: user.toLowerCase(), messageTs: message.ts, ...(message.thread === null ? {} : { threadTs: message.thread }) })));
    },
    heard: (words) => until(`a message like ${words.source}`, () => said(words)[0]),
  };
}

/** The path of a shop file: the example shop, changed as a test wants it, everybody with a chat id. */
export function shopWithChatIds(change: (text: string) => string = (text) => text): string {
  const file = join(tempFolder(), 'shop.yaml');
  const shop = change(readFileSync('src/shop/example-shop.yaml', 'utf8'));
  const withIds = Object.entries(CHAT_IDS).reduce((text, [name, id]) => text.replace(new RegExp(`(${name}: \\{ name: \\w+, role: \\w+)`), `$1, chat: ${id}`), shop);
  writeFileSync(file, withIds);
  return file;
}

/** The line behind a button, read from the blocks as the platform keeps them. */
function buttonLine(message: StandingMessage, label: string): string {
  const found = JSON.stringify(message.blocks).match(new RegExp(`"text":"${label}"[^{}]*\\}[^{}]*?"value":"([^"]+)"`)) ?? JSON.stringify(message.blocks).match(new RegExp(`"value":"([^"]+)"[^{}]*"text":\\{[^{}]*"text":"${label}"`));
  if (found?.[1] === undefined) throw new Error(`no button ${label} in ${JSON.stringify(message.blocks)}`);
  return found[1];
}
