import { expect, it } from 'vitest';
import { CHAT_IDS, slackDay, type SlackDay } from '../support/slack-day.js';
import { mentionPayload, threadPayload } from '../support/slack-stand-in/payloads.js';
import { until } from '../support/slack-stand-in/until.js';

const { tomek, wren, ines } = CHAT_IDS;

/** Two jobs with a check due, so that a bare word could mean either. */
async function twoDue(): Promise<SlackDay & { readonly thread: (job: string) => Promise<string> }> {
  const slack = await slackDay('http', '2026-03-02T09:00');
  await slack.cure(tomek, '501 K lamp 30');
  await slack.cure(tomek, '502 K lamp 30');
  await slack.day.at('10:00');
  return { ...slack, thread: async (job) => (await slack.heard(new RegExp(`^Job ${job}`))).ts };
}

it('a bare word in the thread of 501 is about 501, with and without a mention', async () => {
  const { day, http, thread, heard } = await twoDue();
  const [in501, in502] = [await thread('501'), await thread('502')];
  expect((await http().event(threadPayload({ text: 'ok', user: tomek, threadTs: in501 }))).status).toBe(200);
  expect((await heard(/501.*confirmed 10:00 by Tomek/)).thread).toBe(in501);
  expect(await day.milestone('502', 'handling')).toBe('10:00 due');
  await http().event(mentionPayload({ text: '<@U0BOT> soft', user: ines, threadTs: in502 }));
  expect((await heard(/502.*soft/i)).thread).toBe(in502);
  await http().event(threadPayload({ text: 'off', user: wren, threadTs: in501 }));
  expect((await heard(/501.*lamp off/)).thread).toBe(in501);
  expect(await day.milestone('501', 'handling')).toBe('10:00 confirmed');
});

it('what people say to each other in a thread is theirs; a command with a slip is answered', async () => {
  const { day, http, thread, heard, platform } = await twoDue();
  const in501 = await thread('501');
  const before = await day.posts();
  for (const text of ['thanks, see you at lunch', 'who has the blue cable?', '<@U0BOT> ok', 'https://example.com/picture']) {
    expect((await http().event(threadPayload({ text, user: tomek, threadTs: in501 }))).status).toBe(200);
  }
  // Outside the threads of jobs nothing counts without a mention.
  const elsewhere = platform.room.answer('chat.postMessage', { channel: 'C0HOME', text: 'a question' });
  await http().event(threadPayload({ text: 'hard 501', user: tomek, threadTs: String(elsewhere['ts']) }));
  expect(await day.milestone('501', 'handling')).toBe('10:00 due');
  expect(await day.posts()).toEqual(before);
  await http().event(threadPayload({ text: 'read 3o,5 banana', user: tomek, threadTs: in501 }));
  expect((await heard(/Not understood/)).thread).toBe(in501);
});

it('the same message in a thread twice is one entry', async () => {
  const { day, http, thread, said } = await twoDue();
  const sent = threadPayload({ text: 'hard', user: tomek, threadTs: await thread('501'), eventId: 'Ev-thread' });
  await http().event(sent);
  await http().event(sent, { 'x-slack-retry-num': '1' });
  await until('the answer', () => said(/501.*confirmed 10:00 by Tomek/)[0]);
  expect(await day.milestone('501', 'handling')).toBe('10:00 confirmed');
  expect(said(/already answered/)).toEqual([]);
});
