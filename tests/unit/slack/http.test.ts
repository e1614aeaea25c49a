import { describe, expect, it } from 'vitest';
import { memoryBook } from '../../../src/store/memory-book.js';
import { instant } from '../../../src/cure/units.js';
import { jobNo } from '../../../src/repair/ids.js';
import type { Book } from '../../../src/store/book.js';
import { HOME, slackHouse } from '../../support/slack-house.js';
import { SlackStandIn } from '../../support/slack-stand-in.js';
import { commandPayload, directPayload, mentionPayload, pressPayload } from '../../support/slack-stand-in/payloads.js';
import { until } from '../../support/slack-stand-in/until.js';

const NOW = instant(0);

describe('over HTTP', () => {
  it('a slash command is at the desk before it is acknowledged, and answered to the asker alone', async () => {
    const { http, desk, standIn, slack } = await slackHouse('http');
    slack.start();
    const answer = await http.command(commandPayload({ text: '501 P2 lamp 35', user: 'U0BEN22', userName: 'ben', channel: 'C7' }));
    expect([answer.status, answer.body]).toEqual([200, '']);
    expect(desk.said).toMatchObject([{ text: 'cure 501 P2 lamp 35', from: { id: 'u0ben22', name: 'ben' } }]);
    const shown = await until('the answer', () => standIn.room.shown[0]);
    expect(shown).toMatchObject({ channel: 'C7', user: 'U0BEN22', text: 'heard: cure 501 P2 lamp 35' });
    const record = await until('the record', () => standIn.room.messages.find((one) => one.thread !== null));
    expect(record).toMatchObject({ channel: HOME, text: 'ben: heard: cure 501 P2 lamp 35' });
  });

  it('knows its people from shop.yaml whatever the payload calls them', async () => {
    const { http, desk } = await slackHouse('http');
    await http.command(commandPayload({ text: 'who waits', user: 'U0ANNA1', userName: 'a.nonymous' }));
    expect(desk.said).toMatchObject([{ text: 'who waits', from: { id: 'anna', name: 'Anna' } }]);
  });

  it('a command that fails is acknowledged and says that nothing was written', async () => {
    const { http, desk, log } = await slackHouse('http');
    desk.broken = true;
    const answer = await http.command(commandPayload({ text: '501 P2 lamp 35' }));
    expect(answer.status).toBe(200);
    expect(JSON.parse(answer.body)).toMatchObject({ response_type: 'ephemeral' });
    expect(answer.body).toContain('Nothing was written down');
    expect(log.lines).toContain('error: A command could not be handled; nothing was written down.');
  });

  it('a pressed button in a job\'s thread says its line there', async () => {
    const { http, desk, standIn, book } = await slackHouse('http');
    const head = standIn.room.answer('chat.postMessage', { channel: HOME, text: 'Job 501' });
    const ts = String(head['ts']);
    book.saveThread(jobNo('501'), NOW, { channel: HOME, ts });
    const answer = await http.action(pressPayload({ line: 'hard 501', threadTs: ts, user: 'U0ANNA1' }));
    expect(answer.status).toBe(200);
    expect(desk.said).toMatchObject([{ text: 'hard 501', thread: '501', from: { id: 'anna' } }]);
    expect(await until('the answer', () => standIn.room.messages[1])).toMatchObject({ channel: HOME, thread: ts, text: 'heard: hard 501' });
  });

  it('a press that fails is acknowledged, and the presser is told', async () => {
    const { http, desk, standIn } = await slackHouse('http');
    desk.broken = true;
    expect((await http.action(pressPayload({ line: 'hard 501', user: 'U0ANNA1' }))).status).toBe(200);
    expect(await until('the notice', () => standIn.room.shown[0])).toMatchObject({ user: 'U0ANNA1', channel: HOME });
    expect(standIn.room.messages).toEqual([]);
  });

  it('a mention is answered in its thread, by the name of its profile', async () => {
    const { http, desk, standIn, book } = await slackHouse('http');
    standIn.room.users.set('U0BEN22', 'Ben Beispiel');
    const asked = standIn.room.answer('chat.postMessage', { channel: 'C7', text: 'question' });
    expect((await http.event(mentionPayload({ text: '<@U0BOT> who waits', user: 'U0BEN22', channel: 'C7', ts: String(asked['ts']) }))).status).toBe(200);
    expect(await until('the answer', () => standIn.room.messages[1])).toMatchObject({ channel: 'C7', thread: asked['ts'], text: 'heard: who waits' });
    expect(desk.said).toMatchObject([{ from: { id: 'u0ben22', name: 'Ben Beispiel' } }]);
    expect(book.profileName('U0BEN22')).toBe('Ben Beispiel');
    await http.event(directPayload({ text: 'who waits', user: 'U0BEN22', channel: 'D7' }));
    await until('the second answer', () => standIn.room.messages[2]);
    expect(standIn.callsOf('users.info').length).toBe(1);
  });

  it('somebody whose name the platform does not tell is called by the chat id', async () => {
    const { http, desk, standIn, log } = await slackHouse('http');
    standIn.fault('users.info', { kind: 'error', word: 'user_not_found' });
    await http.event(directPayload({ text: 'who waits', user: 'U0BEN22' }));
    await until('the message', () => desk.said[0]);
    expect(desk.said).toMatchObject([{ from: { id: 'u0ben22', name: 'U0BEN22' } }]);
    expect(log.lines.some((line) => line.startsWith('warn'))).toBe(true);
  });

  it('the same event delivered again changes nothing', async () => {
    const { http, desk, standIn } = await slackHouse('http');
    const payload = directPayload({ text: 'who waits', user: 'U0ANNA1', eventId: 'Ev77' });
    const answers = [await http.event(payload), await http.event(payload, { 'x-slack-retry-num': '1', 'x-slack-retry-reason': 'http_timeout' })];
    expect(answers.map((answer) => answer.status)).toEqual([200, 200]);
    await until('the answer', () => standIn.room.messages[0]);
    await http.event(payload, { 'x-slack-retry-num': '2' });
    expect(desk.said.length).toBe(1);
  });

  it('an event that cannot be stored is not acknowledged, so the platform delivers it again', async () => {
    const book = memoryBook();
    let full = true;
    const failing: Book = { ...book, receive: (...kept) => {
      if (full) throw new Error('disk full');
      return book.receive(...kept);
    } };
    const { http, desk } = await slackHouse('http', { book: failing });
    const payload = directPayload({ text: 'who waits', user: 'U0ANNA1' });
    expect((await http.event(payload)).status).toBe(500);
    expect(desk.said).toEqual([]);
    full = false;
    expect((await http.event(payload)).status).toBe(200);
    await until('the message', () => desk.said[0]);
  });

  it('what a killed process had kept and not handled is handled at the next start, once', async () => {
    const book = memoryBook();
    const first = await slackHouse('http', { book });
    first.desk.broken = true;
    await first.http.event(directPayload({ text: 'who waits', user: 'U0ANNA1', eventId: 'Ev9' }));
    await first.slack.close();
    expect(book.received().map(({ id }) => id)).toEqual(['slack:ev:Ev9']);
    const second = await slackHouse('http', { book });
    second.slack.start();
    await until('the message', () => second.desk.said[0]);
    expect(second.desk.said).toMatchObject([{ id: 'slack:ev:Ev9', text: 'who waits' }]);
    await until('an empty inbox', () => book.received().length === 0);
    expect((await second.http.event(directPayload({ text: 'who waits', user: 'U0ANNA1', eventId: 'Ev9' }))).status).toBe(200);
    expect(second.desk.said.length).toBe(1);
  });

  it.each([
    ['a press without a value', 'action', { ...pressPayload({ line: 'x' }), actions: [{ type: 'button', action_ts: '1.1' }] }],
    ['an event that is no event', 'event', { type: 'event_callback', event_id: 'Ev1', event: 'nonsense' }],
    ['a payload of no known kind', 'event', { hello: 1 }],
    ['an edit of the bot\'s own message', 'event', directPayload({ text: 'x', more: { subtype: 'message_changed' } })],
  ] as const)('%s is acknowledged and does nothing', async (_name, how, payload) => {
    const { http, desk, book, standIn } = await slackHouse('http');
    expect((await http[how](payload)).status).toBe(200);
    expect([desk.said, book.received(), standIn.room.messages]).toEqual([[], [], []]);
  });

  it('answers the platform\'s question for the address, and nobody on other paths', async () => {
    const { http, url } = await slackHouse('http');
    const answer = await http.event({ type: 'url_verification', challenge: 'abc' });
    expect([answer.status, JSON.parse(answer.body)]).toEqual([200, { challenge: 'abc' }]);
    expect((await fetch(url)).status).toBe(404);
    expect((await fetch(`${url}/more`, { method: 'POST', body: '{}' })).status).toBe(404);
  });

  it('posts once, whatever the client library would like to repeat', async () => {
    const { http, standIn } = await slackHouse('http');
    standIn.fault('chat.postMessage', { kind: 'lost' });
    standIn.fault('chat.postEphemeral', { kind: 'done-then-http', status: 503 });
    await http.event(directPayload({ text: 'who waits', user: 'U0ANNA1' }));
    await http.command(commandPayload({ text: 'who waits', user: 'U0ANNA1', channel: 'C7' }));
    await http.command(commandPayload({ text: 'help', user: 'U0ANNA1', channel: 'C7' }));
    await until('the later answer', () => standIn.room.shown.length === 2);
    await until('the look-up', () => standIn.callsOf('conversations.history')[0]);
    expect([standIn.room.messages.length, standIn.callsOf('chat.postMessage').length, standIn.callsOf('chat.postEphemeral').length]).toEqual([1, 1, 2]);
  });

  it('takes commands while the platform does not answer at all', async () => {
    const { http, desk, standIn, slack } = await slackHouse('http');
    standIn.fault('auth.test', { kind: 'hang' });
    slack.start();
    await until('the check', () => standIn.callsOf('auth.test')[0]);
    expect((await http.command(commandPayload({ text: 'who waits' }))).status).toBe(200);
    expect(desk.said.length).toBe(1);
    expect(slack.status().state).toBe('starting');
  });

  it('says that the token is wrong, goes on, and notices when it was put right', async () => {
    const standIn = await SlackStandIn.open();
    standIn.botTokenValid = false;
    const { http, slack, desk } = await slackHouse('http', { standIn });
    slack.start();
    await until('the verdict', () => slack.status().state === 'down');
    expect(slack.status().reason).toContain('invalid_auth');
    expect((await http.command(commandPayload({ text: 'who waits', channel: 'C7' }))).status).toBe(200);
    expect(desk.said.length).toBe(1);
    expect(standIn.room.shown).toEqual([]);
    standIn.botTokenValid = true;
    await until('the recovery', () => slack.status().state === 'up');
    await until('the answer', () => standIn.room.shown[0]);
  });
});

describe('opening', () => {
  it.each([
    ['http', { signingSecret: null }, 'signing secret'],
    ['socket', { appToken: '' }, 'app-level token'],
  ] as const)('in mode %s refuses settings that lack what it needs', async (mode, settings, words) => {
    await expect(slackHouse(mode, { settings })).rejects.toThrow(words);
  });
});
