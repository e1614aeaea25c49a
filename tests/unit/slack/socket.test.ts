import { setTimeout as wait } from 'node:timers/promises';
import { describe, expect, it, onTestFinished } from 'vitest';
import { boltLogger } from '../../../src/chat/slack/bolt-logger.js';
import { lineOpener } from '../../../src/chat/slack/receivers.js';
import { SocketLine } from '../../../src/chat/slack/socket-line.js';
import { HOME, slackHouse } from '../../support/slack-house.js';
import type { SlackHouse } from '../../support/slack-house.js';
import { quietLog } from '../../support/quiet-log.js';
import { SlackStandIn, STAND_IN_APP_TOKEN, STAND_IN_BOT_TOKEN } from '../../support/slack-stand-in.js';
import { commandPayload, mentionPayload, pressPayload } from '../../support/slack-stand-in/payloads.js';
import { until } from '../../support/slack-stand-in/until.js';

async function connected(): Promise<SlackHouse> {
  const house = await slackHouse('socket');
  house.slack.start();
  await until('the line', () => house.slack.status().state === 'up');
  return house;
}

describe('over a WebSocket', () => {
  it('takes commands, presses and mentions, acknowledges each, and answers', async () => {
    const { standIn, desk } = await connected();
    const { socket, room } = standIn;
    expect(await socket.deliver('slash_commands', commandPayload({ text: 'who waits', user: 'U0ANNA1' }))).toEqual({});
    await socket.deliver('interactive', pressPayload({ line: 'hard 501', user: 'U0ANNA1', channel: HOME, messageTs: '6.6' }));
    await socket.deliver('events_api', mentionPayload({ text: '<@U0BOT> soft 501', user: 'U0ANNA1', channel: 'C7', ts: '7.7' }));
    await until('the answers', () => room.shown.length === 1 && room.messages.length === 2);
    expect(desk.said.map((message) => message.text)).toEqual(['who waits', 'hard 501', 'soft 501']);
    expect(room.messages.find((message) => message.channel === HOME)).toMatchObject({ thread: '6.6', text: 'heard: hard 501' });
    expect(room.messages.find((message) => message.channel === 'C7')).toMatchObject({ thread: '7.7', text: 'heard: soft 501' });
  });

  it('the same event over a second envelope changes nothing', async () => {
    const { standIn, desk } = await connected();
    const payload = mentionPayload({ text: '<@U0BOT> who waits', user: 'U0ANNA1' });
    await standIn.socket.deliver('events_api', payload);
    await standIn.socket.deliver('events_api', payload);
    await until('the message', () => desk.said[0]);
    expect(desk.said.length).toBe(1);
  });

  it('a command that fails is acknowledged with the bad news', async () => {
    const { standIn, desk } = await connected();
    desk.broken = true;
    expect(await standIn.socket.deliver('slash_commands', commandPayload({ text: '501 P2' }))).toMatchObject({ response_type: 'ephemeral' });
  });

  it.each([
    ['asked to renew', (standIn: SlackStandIn) => { standIn.socket.askToRenew(); }],
    ['cut off', (standIn: SlackStandIn) => { standIn.socket.drop(); }],
  ])('comes back when it is %s', async (_name, disturb) => {
    const { standIn, desk, slack } = await connected();
    disturb(standIn);
    await until('the second line', () => standIn.socket.greeted === 2 && slack.status().state === 'up');
    await standIn.socket.deliver('slash_commands', commandPayload({ text: 'who waits' }));
    expect(desk.said.length).toBe(1);
    expect(standIn.socket.open).toBe(1);
  });

  it('survives an outage of the whole platform', async () => {
    const { standIn, slack, desk, http } = await connected();
    await standIn.close();
    await until('the trouble', () => slack.status().state === 'down');
    expect(slack.status().reason).toContain('cannot be reached');
    expect((await http.command(commandPayload({ text: 'x' }))).status).toBe(404);
    const back = await SlackStandIn.open(standIn.port);
    onTestFinished(() => back.close());
    await until('the recovery', () => slack.status().state === 'up');
    await back.socket.deliver('slash_commands', commandPayload({ text: 'who waits' }));
    expect(desk.said.length).toBe(1);
  });

  it('with a refused app token stays down, and connects once the token is put right', async () => {
    const standIn = await SlackStandIn.open();
    standIn.appTokenValid = false;
    const { slack } = await slackHouse('socket', { standIn });
    slack.start();
    await until('the verdict', () => slack.status().state === 'down');
    expect(slack.status().reason).toContain('invalid_auth');
    standIn.appTokenValid = true;
    await until('the line', () => slack.status().state === 'up');
  });

  it('that is dropped inside its library is opened anew, and the process is told that it may live on', async () => {
    const { standIn, slack } = await connected();
    const rejections: unknown[] = [];
    const others = process.listeners('unhandledRejection');
    process.removeAllListeners('unhandledRejection').on('unhandledRejection', (reason) => rejections.push(reason));
    onTestFinished(() => {
      process.removeAllListeners('unhandledRejection');
      for (const listener of others) process.on('unhandledRejection', listener);
    });
    // The library reads `payload.event.type` of whatever calls itself an event.
    standIn.socket.sendRaw(JSON.stringify({ envelope_id: 'e1', type: 'events_api', payload: {} }));
    await until('the rejection', () => rejections.length === 1);
    expect(slack.onUnhandledRejection(rejections[0])).toBe(true);
    expect(slack.status().state).toBe('down');
    await until('the second line', () => standIn.socket.greeted === 2 && slack.status().state === 'up');
    expect(slack.onUnhandledRejection(new Error('somebody else\'s'))).toBe(false);
  });

  it('leaves nothing open when it closes', async () => {
    const { standIn, slack } = await connected();
    await slack.close();
    await until('no connection', () => standIn.socket.open === 0);
    await wait(700);
    expect(standIn.socket.greeted).toBe(1);
  });

  it('closes while the platform does not answer', async () => {
    const standIn = await SlackStandIn.open();
    standIn.fault('apps.connections.open', { kind: 'hang' });
    const { slack } = await slackHouse('socket', { standIn });
    slack.start();
    await until('the call', () => standIn.callsOf('apps.connections.open')[0]);
    await slack.close();
    expect(standIn.socket.greeted).toBe(0);
  });
});

describe('a line that is never greeted', () => {
  it('is given up and opened anew', async () => {
    const standIn = await SlackStandIn.open();
    standIn.socket.mute = true;
    const settings = { botToken: STAND_IN_BOT_TOKEN, signingSecret: null, appToken: STAND_IN_APP_TOKEN, apiUrl: standIn.apiUrl, channel: HOME, mode: 'socket' } as const;
    const states: string[] = [];
    const line = new SocketLine({ open: lineOpener(settings, boltLogger(quietLog()), () => undefined), onState: (state) => states.push(state), greetingMs: 150 });
    onTestFinished(async () => {
      await line.close();
      await standIn.close();
    });
    line.start();
    await until('giving up', () => states.includes('down'));
    standIn.socket.mute = false;
    await until('the greeting', () => states.includes('up'));
    await until('one line only', () => standIn.socket.open === 1);
  });
});
