import { expect, it } from 'vitest';
import { CHAT_IDS, slackDay } from '../support/slack-day.js';
import { directPayload } from '../support/slack-stand-in/payloads.js';
import type { StandingMessage } from '../support/slack-stand-in/room.js';
import { until } from '../support/slack-stand-in/until.js';

const { tomek, ines } = CHAT_IDS;
const hasButtons = ({ blocks }: StandingMessage): boolean => JSON.stringify(blocks).includes('"button"');

it('a question that was answered keeps its words and loses its buttons, pressed or typed', async () => {
  const { day, cure, press, said } = await slackDay('http', '2026-03-02T09:00');
  await cure(tomek, '501 K lamp 30');
  await cure(tomek, '502 K j2 lamp 30');
  await day.at('10:10');
  const due = /handling strength due 10:00/;
  await until('both questions twice', () => said(due).length === 4, 20_000);
  const [first] = said(/501.*handling strength due/);
  if (first === undefined) throw new Error('no question');
  await press(tomek, first, 'Hard');
  await until('the edits', () => said(/501.*due 10:00[^]*done by Tomek 10:10 \(hard\)/).length === 2);
  expect(said(/501.*due 10:00/).map(hasButtons)).toEqual([false, false]);
  // The other job's questions still stand.
  expect(said(/502 j2.*due 10:00/).map(hasButtons)).toEqual([true, true]);
  await day.says('ines', 'soft 502 j2');
  await until('the edits', () => said(/502 j2.*due 10:00[^]*done by Ines 10:10 \(soft\)/).length === 2);
});

it('a question that an entry has overtaken says so', async () => {
  const { day, cure, said } = await slackDay('http', '2026-03-02T09:00');
  await cure(tomek, '501 K lamp 30');
  await day.at('10:00');
  await until('the question', () => said(/handling strength due 10:00/)[0]);
  await day.says('wren', '501 off at 9:30');
  const edited = await until('the edit', () => said(/due 10:00[^]*no longer so, changed by Wren 10:00/)[0]);
  expect(hasButtons(edited)).toBe(false);
});

it('the first message of a thread is the job\'s sheet: edited when something changes, never by time alone', async () => {
  const { day, cure, heard, platform, said } = await slackDay('http', '2026-03-02T09:00');
  await cure(tomek, '501 K lamp 30');
  const head = await heard(/^Job 501/);
  const sheet = (): string => platform.room.messages.find((message) => message.ts === head.ts)?.text ?? '';
  await until('the sheet', () => /K, Tomek, lamp 30 °C: handling strength Mon 2 Mar 10:00, not checked/.test(sheet()));
  const edits = (): number => platform.callsOf('chat.update').filter((call) => call.args['ts'] === head.ts).length;
  const before = edits();
  await day.at('10:30');
  await until('two alarms', () => said(/handling strength due 10:00/).length === 3, 20_000);
  expect(edits()).toBe(before);
  expect(platform.room.messages.filter((message) => message.thread === head.ts).length).toBeGreaterThanOrEqual(3);
  await day.says('wren', '501 off at 9:30');
  await until('the change', () => sheet().includes('lamp off'));
  expect(platform.room.messages.filter((message) => message.text.startsWith('Job 501'))).toHaveLength(1);
});

it('an edit that fails holds up no alarm, and is made when it can be', async () => {
  const { day, cure, said, heard, platform } = await slackDay('http', '2026-03-02T09:00');
  platform.fault('chat.update', { kind: 'http', status: 503 }, { kind: 'limited', seconds: 3 }, { kind: 'lost' });
  await cure(tomek, '501 K lamp 30');
  await heard(/^Job 501/);
  await day.at('10:00');
  await until('the alarm', () => said(/handling strength due 10:00/)[0], 3_000);
  await until('the sheet', () => said(/^Job 501[^]*handling strength Mon 2 Mar 10:00/)[0], 25_000);
  // The last one was carried out and its answer lost: made again, it changes nothing.
  expect(platform.callsOf('chat.update').length).toBeGreaterThanOrEqual(3);
});

it('an answered question is edited after a kill -9 as well', async () => {
  const { day, cure, said, platform } = await slackDay('http', '2026-03-02T09:00');
  await cure(tomek, '501 K lamp 30');
  await day.at('10:00');
  await until('the question', () => said(/handling strength due 10:00/)[0]);
  platform.fault('chat.update', { kind: 'http', status: 503 }, { kind: 'hang' });
  await day.says('tomek', 'hard 501');
  await day.killedUntil('10:01');
  await until('the edit', () => said(/due 10:00[^]*done by Tomek 10:00 \(hard\)/)[0], 40_000);
}, 90_000);

it('whoever is not on the list is offered to the foreman, with buttons that go once it is decided', async () => {
  const { http, heard, press, said, platform } = await slackDay('http', '2026-03-02T09:00');
  platform.room.users.set('U0NEW1', 'Nadia');
  await http().event(directPayload({ text: 'cure 502 P2 lamp 35', user: 'U0NEW1' }));
  const offer = await heard(/Nadia is not one of/);
  expect([offer.channel, offer.text.includes(`<@${ines}>`), hasButtons(offer)]).toEqual(['C0HOME', true, true]);
  await press(ines, offer, 'Technician');
  const decided = await until('the edit', () => said(/Nadia is not one of[^]*done by Ines 09:00/)[0]);
  expect(hasButtons(decided)).toBe(false);
});

it('what an answer offered is edited once it was done: pressed, or typed in other words', async () => {
  const { http, day, heard, press, said } = await slackDay('http', '2026-03-02T09:00');
  const replyTo = async (line: string, words: RegExp): Promise<StandingMessage> => {
    await http().event(directPayload({ text: line, user: tomek }));
    return heard(words);
  };
  const pressed = await replyTo('paste 501 P1', /^501 P1 paste/);
  const typed = await replyTo('paste 502 P1', /^502 P1 paste/);
  const other = await replyTo('paste 503 P1', /^503 P1 paste/);
  expect([pressed, typed, other].map(hasButtons)).toEqual([true, true, true]);
  await day.at('09:05');
  await press(tomek, pressed, 'Closed');
  const done = await until('the edit', () => said(/^501 P1 paste[^]*done by Tomek 09:05$/)[0]);
  expect([done.ts, hasButtons(done)]).toEqual([pressed.ts, false]);
  await day.says('wren', 'closed 502 2 min ago');
  expect(hasButtons(await until('the edit', () => said(/^502 P1 paste[^]*done by Wren 09:05$/)[0]))).toBe(false);
  // A question, and a deed at another job, leave it as it is.
  await day.says('wren', 'when 503');
  expect(said(/^503 P1 paste/).map(hasButtons)).toEqual([true]);

  expect(hasButtons(await replyTo('cure 504 K lamp 30', /^504 K closed 09:05/))).toBe(true);
  await day.says('tomek', 'undo');
  expect(hasButtons(await until('the edit', () => said(/^504 K closed 09:05[^]*taken back by Tomek 09:05$/)[0]))).toBe(false);
});

it('a press that was refused leaves the buttons of the answer, also when the program was killed in between', async () => {
  const { http, day, heard, press, said, platform } = await slackDay('http', '2026-03-02T09:00');
  await http().event(directPayload({ text: 'paste 501 P1', user: tomek }));
  const reply = await heard(/^501 P1 paste/);
  await press('U0NEW1', reply, 'Closed');
  await heard(/not one of/);
  expect(said(/^501 P1 paste/).map(hasButtons)).toEqual([true]);
  platform.fault('chat.update', { kind: 'hang' });
  await press(tomek, reply, 'Closed');
  await day.killedUntil('09:01');
  await until('the edit', () => said(/^501 P1 paste[^]*done by Tomek 09:00$/)[0], 40_000);
}, 90_000);
