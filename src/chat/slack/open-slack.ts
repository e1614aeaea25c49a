import { randomUUID } from 'node:crypto';
import type { RequestListener } from 'node:http';
import type { Logger } from '@slack/bolt';
import type { OutboxStore } from '../../clerk/ports.js';
import type { Message } from '../../clerk/message.js';
import { instant } from '../../cure/units.js';
import type { Instant } from '../../cure/units.js';
import type { ChatSender } from '../../outbox/chat-sender.js';
import type { Log } from '../../outbox/log.js';
import type { Shop } from '../../repair/shop.js';
import type { Reader } from '../../reply/catalogue/speaker.js';
import type { Desk } from '../../clerk/desk.js';
import { settingFor } from '../../reply/compose/setting-for.js';
import { askName } from './ask-name.js';
import { boltLogger } from './bolt-logger.js';
import { ClerkApp } from './clerk-app.js';
import { CureForms } from './cure-forms.js';
import { namesClient, sendingClient } from './clients.js';
import { fromTheLibrary } from './from-the-library.js';
import { Health } from './health.js';
import type { SlackStatus } from './health.js';
import { HomeTabs } from './home-tabs.js';
import { Inbox } from './inbox.js';
import type { Pressed } from './incoming.js';
import { isForUs } from './is-for-us.js';
import { People } from './people.js';
import { post, show } from './post.js';
import { ReasonForms } from './reason-forms.js';
import { reception } from './reception.js';
import type { ReceptionPorts } from './reception.js';
import { httpListener, lineOpener } from './receivers.js';
import type { Admit } from './receivers.js';
import { SlackSender } from './sender.js';
import type { SlackSettings } from './settings.js';
import { SocketLine } from './socket-line.js';
import { heardMessage, homeMessage, pressedMessage, typedMessage } from './to-message.js';
import type { Readings } from './to-message.js';
import { TokenCheck } from './token-check.js';

export interface SlackPorts {
  readonly desk: Desk;
  readonly outbox: OutboxStore;
  readonly shop: Shop;
  /** Whether a typed line begins with a command word; `/cure 501 …` does not and gets `cure` put before it. */
  readonly isCommandLine: (line: string) => boolean;
  readonly log: Log;
}

export interface SlackChat {
  /** Serves POST /slack/events; mode `http` only, null otherwise. The app's own server calls it. */
  readonly requestListener: RequestListener | null;
  readonly sender: ChatSender;
  /** Returns at once; the transport comes up by itself and stays up. */
  start(): void;
  close(): Promise<void>;
  status(): SlackStatus;
  /** Whether an unhandled rejection came out of the transport's libraries; then the line is opened anew and the process may live on. */
  onUnhandledRejection(reason: unknown): boolean;
}

/** Opens the house to the chat platform. Throws when the settings lack what the mode needs; touches no network yet. */
export function openSlack(settings: SlackSettings, ports: SlackPorts): SlackChat {
  const { log, outbox } = ports;
  const logger = boltLogger(log);
  const client = sendingClient(settings, logger);
  const health = new Health(log, settings.mode === 'socket' ? ['token', 'line'] : ['token']);
  const token = new TokenCheck(client, health);
  const desk = receptionPorts(settings, ports, logger, token);
  const take = reception(desk);
  // An app enters itself into its receiver; nothing else is wanted of it.
  const admit: Admit = (receiver) => {
    new ClerkApp(receiver, settings.botToken, logger, take);
  };
  const requestListener = settings.mode === 'http' ? httpListener(settings, logger, admit) : null;
  const line = settings.mode === 'socket' ? openLine(settings, logger, admit, health) : null;

  return {
    requestListener,
    sender: new SlackSender({
      client,
      outbox,
      home: settings.channel,
      realNow,
      report: (part, trouble) => { health.set(part, trouble === null ? 'up' : 'down', trouble); },
    }),
    start: () => {
      line?.start();
      void token.run();
      void desk.inbox.workOff();
      void desk.homes.resume();
    },
    close: async () => {
      token.close();
      desk.homes.close();
      await Promise.all([line?.close(), desk.inbox.close()]);
    },
    status: () => health.status(),
    onUnhandledRejection: (reason) => {
      if (!fromTheLibrary(reason)) return false;
      log.error({ error: reason }, 'The chat transport failed inside its library; the line is opened anew.');
      if (line !== null) health.set('line', 'down', 'The transport failed inside its library; it is being restarted.');
      line?.restart();
      return true;
    },
  };
}

const realNow = (): Instant => instant(Date.now());

function openLine(settings: SlackSettings, logger: Logger, admit: Admit, health: Health): SocketLine {
  return new SocketLine({ open: lineOpener(settings, logger, admit), onState: (state, reason) => { health.set('line', state, reason); } });
}

/** Who speaks, what it means, and the desk it goes to. */
function receptionPorts(settings: SlackSettings, ports: SlackPorts, logger: Logger, token: TokenCheck): ReceptionPorts {
  const { desk, outbox, shop, log, isCommandLine } = ports;
  const names = namesClient(settings, logger);
  const people = new People({ shop, outbox, realNow, askName: (chatId) => askName(names, chatId), log });
  const readings: Readings = {
    jobOfThread: (channel, ts) => outbox.jobOfThread(channel, ts),
    wordFor: (chatId) => people.wordFor(chatId),
    isCommandLine,
    botUserId: () => token.botUserId,
  };
  const say = (message: Message): void => { desk.say(message); };
  const readerOf = (chatId: string): Reader => people.readerOf(chatId);
  const tell = async (user: string, text: string): Promise<void> => {
    const told = await post(names, { channel: user, thread: null }, { text, blocks: [] }, `told:${randomUUID()}`);
    if (told.kind !== 'sent') log.warn({ told }, 'Somebody could not be told that something went wrong.');
  };
  const tellAlone = async ({ channel, thread, user }: Pressed, text: string): Promise<void> => {
    const told = await show(names, { channel, thread }, user, { text, blocks: [] });
    if (told.kind !== 'sent') log.warn({ told }, 'Somebody could not be told that their press changed nothing.');
  };
  return {
    tell,
    readerOf,
    homes: new HomeTabs({ desk, client: names, personOf: (chatId) => people.personOf(chatId), readerOf, outbox, realNow, log }),
    fromHome: async (pressed) => homeMessage(pressed, await people.known(pressed.user, pressed.userName)),
    forms: new CureForms({ desk, client: names, personOf: (chatId) => people.personOf(chatId), readerOf, speaker: (chatId, handle) => people.known(chatId, handle), tell, log }),
    inbox: new Inbox({ outbox, realNow, toMessage: async (heard) => heardMessage(heard, await people.known(heard.user, null), readings), say, log }),
    say,
    isForUs: (heard) => isForUs(heard, { ...readings, understands: (line) => desk.understands(line) }),
    fromTyped: async (typed) => typedMessage(typed, await people.known(typed.user, typed.userName), readings),
    fromPressed: async (pressed) => pressedMessage(pressed, await people.known(pressed.user, pressed.userName), readings),
    reasons: new ReasonForms({
      desk,
      client: names,
      readerOf: (chatId) => settingFor(people.personOf(chatId), { shop, now: realNow() }),
      speaker: (chatId, handle) => people.known(chatId, handle),
      pressedBy: (pressed, from) => pressedMessage(pressed, from, readings),
      tellAlone,
      log,
    }),
    tellAlone,
    log,
  };
}
