import { expect, it } from 'vitest';
import { CHAT_IDS, slackDay } from '../support/slack-day.js';
import { directPayload, mentionPayload } from '../support/slack-stand-in/payloads.js';
import { until } from '../support/slack-stand-in/until.js';

const { tomek, ines } = CHAT_IDS;

it('A01 by signed requests: /cure, one thread, one reminder that names Tomek', async () => {
  const { day, cure, heard, said, platform } = await slackDay('http', '2026-03-02T09:00');
  await cure(tomek, '501 K lamp 30');
  const head = await heard(/^Job 501/);
  const shown = await until('the answer to Tomek alone', () => platform.room.shown[0]);
  expect(shown.text).toContain('10:00');
  expect(shown.user).toBe(tomek);
  await day.at('10:00');
  const reminder = await heard(/handling strength due/i);
  expect(reminder.thread).toBe(head.ts);
  expect(reminder.text).toContain(`<@${tomek}>`);
  expect(reminder.text).toContain('10:00');
  expect(said(/handling strength due/i)).toHaveLength(1);
});

it('A02 by signed requests: Hard and Turned up are buttons', async () => {
  const { day, cure, heard, press } = await slackDay('http', '2026-03-02T09:00');
  await cure(tomek, '501 K lamp 30');
  await day.at('10:04');
  await press(tomek, await heard(/handling strength due/i), 'Hard');
  const confirmed = await heard(/confirmed 10:04 by Tomek/i);
  await day.at('10:07');
  await press(tomek, confirmed, 'Turned up');
  await heard(/lamp 60 °C since 10:07/i);
  expect(await day.milestone('501', 'full')).toBe('11:37 running');
  await day.at('11:37');
  expect((await heard(/full strength due 11:37/i)).text).toMatch(/lamp off/i);
});

it('a mention and a direct message lead to the same command path, and the same event twice is one', async () => {
  const { day, http, heard, press, platform } = await slackDay('http', '2026-03-02T09:00');
  platform.room.users.set('U0NEW1', 'Nadia');
  const mention = mentionPayload({ text: '<@U0BOT> cure 501 K lamp 30', user: tomek, eventId: 'Ev-same' });
  await http().event(mention);
  await http().event(mention, { 'x-slack-retry-num': '1', 'x-slack-retry-reason': 'http_timeout' });
  await heard(/K closed 09:00/);
  expect(await day.milestone('501', 'handling')).toBe('10:00 running');
  await http().event(directPayload({ text: 'cure 502 P2 lamp 35', user: 'U0NEW1' }));
  await heard(/Nadia, you are not on the shop's list/);
  await press(ines, await heard(/Nadia\W* is not one of/), 'Technician');
  await http().event(directPayload({ text: 'cure 502 P2 lamp 35', user: 'U0NEW1' }));
  await heard(/502 P2 closed 09:00/);
  expect((await day.says('ines', 'who waits')).text).toContain('Nadia');
});

it('somebody who only ever pressed a button is known by the name of the profile', async () => {
  const { day, cure, heard, press, platform } = await slackDay('http', '2026-03-02T09:00');
  platform.room.users.set('U0NEW1', 'Nadia');
  await cure(tomek, '501 K lamp 30');
  await day.at('10:00');
  await press('U0NEW1', await heard(/handling strength due/i), 'Hard');
  await press(ines, await heard(/Nadia\W* is not one of/), 'Technician');
  await press('U0NEW1', await heard(/handling strength due/i), 'Hard');
  expect((await heard(/confirmed/)).text).toContain('by Nadia');
});

it('wrong and old signatures are turned away', async () => {
  const { day, http } = await slackDay('http', '2026-03-02T09:00');
  const body = 'command=%2Fcure&text=501+K+lamp+30&user_id=U1&trigger_id=t';
  const form = { 'content-type': 'application/x-www-form-urlencoded' };
  const now = String(Math.floor(Date.now() / 1000));
  expect((await http().raw(body, { ...form, 'x-slack-request-timestamp': now, 'x-slack-signature': 'v0=00' })).status).toBe(401);
  expect((await day.says('ines', 'who waits')).text).toContain('No car waits');
});

it('A01 through a real WebSocket', async () => {
  const { day, heard, platform } = await slackDay('socket', '2026-03-02T09:00');
  await until('the connection', () => platform.socket.open === 1);
  await platform.socket.deliver('slash_commands', { command: '/cure', text: '501 K lamp 30', user_id: tomek, user_name: 'tomek', channel_id: 'C0HOME', team_id: 'T0SHOP', trigger_id: 'socket-1', response_url: 'http://127.0.0.1:9/unused' });
  await heard(/^Job 501/);
  await day.at('10:00');
  expect((await heard(/handling strength due/i)).text).toContain(`<@${tomek}>`);
});

it('a reminder that fell into a kill -9 comes once', async () => {
  const { day, cure, heard, said } = await slackDay('http', '2026-03-02T09:00');
  await cure(tomek, '501 K lamp 30');
  await heard(/^Job 501/);
  await day.at('09:59');
  await day.killedUntil('10:20');
  expect((await heard(/handling strength due 10:00/i)).text).toMatch(/I was down/);
  await day.killedUntil('10:20');
  await until('the platform was asked', () => said(/handling strength/i).length >= 1);
  expect(said(/handling strength due/i)).toHaveLength(1);
});

it('a platform that refuses everything does not stop the clock', async () => {
  const { day, platform } = await slackDay('socket', '2026-03-02T09:00');
  platform.botTokenValid = false;
  platform.appTokenValid = false;
  platform.socket.drop();
  await day.says('tomek', 'cure 501 K lamp 30');
  await day.at('10:00');
  expect(await day.posted()).toEqual(['10:00 handling tomek']);
});
