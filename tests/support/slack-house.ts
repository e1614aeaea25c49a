import { createServer } from 'node:http';
import { onTestFinished } from 'vitest';
import { slackAddressing } from '../../src/chat/slack/addressing.js';
import { openSlack } from '../../src/chat/slack/open-slack.js';
import type { SlackChat } from '../../src/chat/slack/open-slack.js';
import type { SlackSettings } from '../../src/chat/slack/settings.js';
import type { Reply } from '../../src/clerk/desk.js';
import type { Message } from '../../src/clerk/message.js';
import { instant } from '../../src/cure/units.js';
import { Dispatcher } from '../../src/outbox/dispatcher.js';
import { jobNo } from '../../src/repair/ids.js';
import type { Book } from '../../src/store/book.js';
import { memoryBook } from '../../src/store/memory-book.js';
import { FakeDesk } from './fake-desk.js';
import { quietLog } from './quiet-log.js';
import { SlackStandIn, STAND_IN_APP_TOKEN, STAND_IN_BOT_TOKEN } from './slack-stand-in.js';
import { listen } from './slack-stand-in/listen.js';
import { overHttp } from './slack-stand-in/over-http.js';
import type { OverHttp } from './slack-stand-in/over-http.js';
import { slackShop } from './slack-shop.js';

export const SECRET = '8f742231b10e8888abcd99yyyzzz85a5';
export const HOME = 'C0HOME';

/** A desk that queues its answers as the clerk does: `cure 501 …` is an entry about job 501. */
class QueueingDesk extends FakeDesk {
  readonly #book: Book;
  /** Set to make the desk fail. */
  broken = false;

  constructor(book: Book) {
    super();
    this.#book = book;
  }

  override say(message: Message): Reply {
    if (this.broken) throw new Error('disk full');
    const reply = super.say(message);
    const job = /^cure (\d+)/.exec(message.text)?.[1] ?? null;
    const addressing = slackAddressing(slackShop());
    this.#book.transact((tx) => { tx.queue(addressing.reply(message, reply.answer, job === null ? null : jobNo(job), job !== null, instant(0))); });
    return reply;
  }
}

export interface SlackHouse {
  readonly standIn: SlackStandIn;
  readonly book: Book;
  readonly desk: QueueingDesk;
  readonly slack: SlackChat;
  readonly dispatcher: Dispatcher;
  readonly log: ReturnType<typeof quietLog>;
  /** Address of /slack/events. */
  readonly url: string;
  /** The platform calling over HTTP; every call is refused in mode `socket`. */
  readonly http: OverHttp;
}

export interface HouseChoice {
  readonly standIn?: SlackStandIn;
  readonly book?: Book;
  readonly settings?: Partial<SlackSettings>;
}

/** The real transport and the real dispatcher between a stand-in of the platform and a fake desk; closed after the test. */
export async function slackHouse(mode: 'http' | 'socket', choice: HouseChoice = {}): Promise<SlackHouse> {
  const standIn = choice.standIn ?? (await SlackStandIn.open());
  const book = choice.book ?? memoryBook();
  const desk = new QueueingDesk(book);
  const log = quietLog();
  const settings = { botToken: STAND_IN_BOT_TOKEN, signingSecret: SECRET, appToken: STAND_IN_APP_TOKEN, apiUrl: standIn.apiUrl, channel: HOME, mode, ...choice.settings };
  const isCommandLine = (line: string): boolean => /^(?:cure|closed|who|hard|soft|help)\b/.test(line);
  const slack = openSlack(settings, { desk, outbox: book, shop: slackShop(), isCommandLine, log });
  const dispatcher = new Dispatcher({ store: book, sender: slack.sender, realNow: () => instant(Date.now()), log, pacing: { spacingMs: 5, settleMs: 5, backoff: () => 20 } });
  desk.onChange(() => { dispatcher.kick(); });
  const server = createServer((request, response) => {
    if (slack.requestListener === null) response.writeHead(404).end();
    else slack.requestListener(request, response);
  });
  const port = await listen(server);
  onTestFinished(async () => {
    await slack.close();
    await dispatcher.close();
    server.closeAllConnections();
    server.close();
    await standIn.close();
  });
  const url = `http://127.0.0.1:${port}/slack/events`;
  return { standIn, book, desk, slack, dispatcher, log, url, http: overHttp(url, SECRET) };
}
