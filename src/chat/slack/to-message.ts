import { messageId } from '../../clerk/message.js';
import type { Message, Speaker } from '../../clerk/message.js';
import type { JobNo } from '../../repair/ids.js';
import type { Heard, Pressed, Typed } from './incoming.js';
import type { HomePressed } from './incoming-view.js';
import { plainText, withoutMention } from './plain-text.js';
import { slashLine } from './slash-line.js';

/** What a payload needs from outside to become a message. */
export interface Readings {
  /** The job whose thread this is, or null. */
  readonly jobOfThread: (channel: string, ts: string) => JobNo | null;
  /** The word for a mentioned person. */
  readonly wordFor: (chatId: string) => string;
  readonly isCommandLine: (line: string) => boolean;
  readonly botUserId: () => string | null;
}

/** A slash command; only the asker sees the answer. */
export function typedMessage(typed: Typed, from: Speaker, readings: Readings): Message {
  return {
    id: messageId(`slack:cmd:${typed.triggerId}`),
    from,
    text: slashLine(plainText(typed.text, readings.wordFor), readings.isCommandLine),
    thread: null,
    returnPath: { chat: 'slack', channel: typed.channel, thread: null, user: typed.user, visible: 'to-asker' },
    mayRepeat: true,
  };
}

/** A pressed button: its value is the line. The answer goes into the thread the button stands in, or begins one below it. */
export function pressedMessage(pressed: Pressed, from: Speaker, readings: Readings): Message {
  const { channel, messageTs, thread, user } = pressed;
  const answerThread = pressed.ephemeral || isDirect(channel) ? thread : (thread ?? messageTs);
  return {
    id: messageId(`slack:act:${channel}:${messageTs}:${pressed.actionTs}:${user}`),
    from,
    text: pressed.line,
    thread: readings.jobOfThread(channel, thread ?? messageTs),
    returnPath: { chat: 'slack', channel, thread: answerThread, user, visible: pressed.ephemeral ? 'to-asker' : 'to-all' },
    mayRepeat: true,
  };
}

/** A button on a home tab, where nothing can be answered: the answer goes to the presser's direct messages. */
export function homeMessage({ user, viewId, actionTs, line }: HomePressed, from: Speaker): Message {
  return { id: messageId(`slack:home:${viewId}:${actionTs}:${user}`), from, text: line, thread: null, returnPath: { chat: 'slack-direct', user, from: 'home' }, mayRepeat: true };
}

/** A mention and what was written into a job's thread are answered in the thread, a direct message where it was written. */
export function heardMessage(heard: Heard, from: Speaker, readings: Readings): Message {
  const { channel, thread, ts, user } = heard;
  const raw = heard.how === 'mention' ? withoutMention(heard.text, heard.bot ?? readings.botUserId()) : heard.text;
  const text = plainText(raw, readings.wordFor);
  return {
    id: messageId(`slack:ev:${heard.id}`),
    from,
    text: text === '' ? 'help' : text,
    thread: thread === null ? null : readings.jobOfThread(channel, thread),
    returnPath: { chat: 'slack', channel, thread: heard.how === 'mention' ? (thread ?? ts) : thread, user, visible: 'to-all' },
    mayRepeat: true,
  };
}

function isDirect(channel: string): boolean {
  return channel.startsWith('D');
}
