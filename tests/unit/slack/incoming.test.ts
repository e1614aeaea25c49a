import { describe, expect, it } from 'vitest';
import { readIncoming } from '../../../src/chat/slack/incoming.js';
import { heardMessage, pressedMessage, typedMessage } from '../../../src/chat/slack/to-message.js';
import type { Readings } from '../../../src/chat/slack/to-message.js';
import type { Message } from '../../../src/clerk/message.js';
import { jobNo, personId } from '../../../src/repair/ids.js';
import { commandPayload, directPayload, mentionPayload, pressPayload } from '../../support/slack-stand-in/payloads.js';
import { homeOpenedPayload, homePressPayload, shortcutPayload, submissionPayload } from '../../support/slack-stand-in/view-payloads.js';

const PLAIN = { type: 'plain_text', text: 'x' } as const;
const ANNA = { id: personId('anna'), name: 'Anna' };
const READINGS: Readings = {
  jobOfThread: (channel, ts) => (channel === 'C0HOME' && ts === '5.5' ? jobNo('501') : null),
  wordFor: (chatId) => chatId.toLowerCase(),
  isCommandLine: (line) => line.startsWith('closed'),
  botUserId: () => null,
};

function toMessage(body: Record<string, unknown>): Message {
  const incoming = readIncoming(body);
  switch (incoming.kind) {
    case 'typed':
      return typedMessage(incoming.typed, ANNA, READINGS);
    case 'pressed':
      return pressedMessage(incoming.pressed, ANNA, READINGS);
    case 'heard':
      return heardMessage(incoming.heard, ANNA, READINGS);
    default:
      throw new Error(incoming.kind);
  }
}

describe('a slash command', () => {
  it('is named by its trigger and answered to the asker alone', () => {
    expect(toMessage(commandPayload({ text: '501 P2 lamp 35', user: 'U1', channel: 'C7', triggerId: '13.77.ab' }))).toEqual({
      id: 'slack:cmd:13.77.ab',
      from: ANNA,
      text: 'cure 501 P2 lamp 35',
      thread: null,
      returnPath: { chat: 'slack', channel: 'C7', thread: null, user: 'U1', visible: 'to-asker' },
      mayRepeat: true,
    });
  });

  it('without text asks for help', () => {
    expect(toMessage(commandPayload({ text: ' ' })).text).toBe('help');
  });
});

describe('a pressed button', () => {
  it('says its line in the job of its thread', () => {
    expect(toMessage(pressPayload({ line: 'hard 501', channel: 'C0HOME', messageTs: '6.6', threadTs: '5.5', actionTs: '7.7', user: 'U1' }))).toEqual({
      id: 'slack:act:C0HOME:6.6:7.7:U1',
      from: ANNA,
      text: 'hard 501',
      thread: '501',
      returnPath: { chat: 'slack', channel: 'C0HOME', thread: '5.5', user: 'U1', visible: 'to-all' },
      mayRepeat: true,
    });
  });

  it('at the top level begins a thread below it', () => {
    expect(toMessage(pressPayload({ line: 'hard 501', messageTs: '6.6' })).returnPath).toMatchObject({ thread: '6.6', visible: 'to-all' });
  });

  it('in a direct message is answered there, in one seen by one person only to that person', () => {
    expect(toMessage(pressPayload({ line: 'x', channel: 'D1', messageTs: '6.6' })).returnPath).toMatchObject({ channel: 'D1', thread: null, visible: 'to-all' });
    expect(toMessage(pressPayload({ line: 'x', messageTs: '6.6', ephemeral: true })).returnPath).toMatchObject({ thread: null, visible: 'to-asker' });
  });
});

describe('an event', () => {
  it('of a mention is answered in its thread', () => {
    expect(toMessage(mentionPayload({ text: '<@U0BOT> closed 501 &lt;60 for <@U0ANNA1>', channel: 'C0HOME', ts: '8.8', eventId: 'Ev1', user: 'U1' }))).toEqual({
      id: 'slack:ev:Ev1',
      from: ANNA,
      text: 'closed 501 <60 for u0anna1',
      thread: null,
      returnPath: { chat: 'slack', channel: 'C0HOME', thread: '8.8', user: 'U1', visible: 'to-all' },
      mayRepeat: true,
    });
    expect(toMessage(mentionPayload({ text: '<@U0BOT>', channel: 'C0HOME', ts: '8.8', threadTs: '5.5' }))).toMatchObject({ text: 'help', thread: '501', returnPath: { thread: '5.5' } });
  });

  it('of a direct message is answered where it was written', () => {
    expect(toMessage(directPayload({ text: 'who waits', channel: 'D1' }))).toMatchObject({ text: 'who waits', returnPath: { channel: 'D1', thread: null, visible: 'to-all' } });
  });

  it.each([
    ['an edit of its own', directPayload({ text: 'x', more: { subtype: 'message_changed', user: undefined } })],
    ['an own message', directPayload({ text: 'x', more: { bot_id: 'B0BOT' } })],
    ['a message in a channel', directPayload({ text: 'x', more: { channel_type: 'channel' } })],
    ['another event', directPayload({ text: 'x', more: { type: 'reaction_added' } })],
    ['another payload', { type: 'message_action' }],
    ['another form', submissionPayload({ user: 'U1' }, { id: 'V1', hash: 'h', view: { type: 'modal', callback_id: 'another', title: PLAIN, submit: PLAIN, close: PLAIN, blocks: [] } }, {})],
    ['another shortcut', shortcutPayload({ user: 'U1' }, 'another')],
    ['the messages tab', homeOpenedPayload('U1', 'messages')],
  ])('is left alone when it is %s', (_what, body) => {
    expect(readIncoming(body).kind).toBe('not-for-us');
  });
});

describe('an unreadable payload', () => {
  it.each([
    ['nothing', {}],
    ['a form without fields', { type: 'view_submission', user: { id: 'U1' }, view: { id: 'V1', callback_id: 'start-cure' } }],
    ['a shortcut without a trigger', { ...shortcutPayload({ user: 'U1' }), trigger_id: '' }],
    ['a press on a home tab without a line', { ...homePressPayload({ user: 'U1' }, 'x'), actions: [] }],
    ['a command without an id', { ...commandPayload({ text: 'x' }), trigger_id: '' }],
    ['a command that is no text', { ...commandPayload({ text: 'x' }), text: ['x'] }],
    ['a press without a button', { ...pressPayload({ line: 'x' }), actions: [] }],
    ['a press without a value', { ...pressPayload({ line: 'x' }), actions: [{ action_ts: '1.1', type: 'button' }] }],
    ['a press without a place', { ...pressPayload({ line: 'x' }), channel: null }],
    ['an event that is no event', { type: 'event_callback', event_id: 'Ev1', event: 'x' }],
    ['an event without an id', { ...mentionPayload({ text: 'x' }), event_id: undefined }],
    ['a mention without words', mentionPayload({ text: 'x', more: { text: 7 } })],
    ['a mention without a speaker', mentionPayload({ text: 'x', more: { user: undefined } })],
  ])('is called malformed: %s', (_what, body) => {
    expect(readIncoming(body).kind).toBe('malformed');
  });
});
