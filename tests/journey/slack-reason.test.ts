import { expect, it } from 'vitest';
import { z } from 'zod';
import { CHAT_IDS, slackDay, type SlackDay } from '../support/slack-day.js';
import { pressPayload } from '../support/slack-stand-in/payloads.js';
import { until } from '../support/slack-stand-in/until.js';
import type { OpenView } from '../support/slack-stand-in/views.js';
import { submissionPayload } from '../support/slack-stand-in/view-payloads.js';

const refusalSchema = z.object({ response_action: z.literal('errors'), errors: z.record(z.string(), z.string()) });
const { ines, tomek } = CHAT_IDS;

/** The form that somebody sees after pressing Go on under the foreman's question about the open limit of 501. */
async function pressedGoOn(slack: SlackDay, user: string): Promise<OpenView> {
  const asked = await slack.heard(/501 open limit 10:00 passed.*You decide/);
  expect(JSON.stringify(asked.blocks)).toContain('"action_id":"ask-reason-0"');
  const before = slack.platform.views.newest?.id;
  const press = pressPayload({ line: 'release 501 j1', actionId: 'ask-reason-0', user, messageTs: asked.ts, ...(asked.thread === null ? {} : { threadTs: asked.thread }) });
  expect((await slack.http().action(press)).status).toBe(200);
  return until('the form', () => (slack.platform.views.newest?.id === before ? null : slack.platform.views.newest));
}

/** Pasted at 09:00, closed seven minutes after the open limit. */
async function closedLate(): Promise<SlackDay> {
  const slack = await slackDay('http', '2026-03-02T09:00');
  await slack.cure(tomek, 'paste 501 P1');
  await slack.day.at('10:07');
  await slack.cure(tomek, 'closed 501');
  expect(await slack.day.milestone('501', 'handling')).toBe('15:07 held');
  return slack;
}

it('Go on asks for the reason, and goes on with what was written', async () => {
  const slack = await closedLate();
  const form = await pressedGoOn(slack, ines);
  expect(form.view.blocks.map((block) => block.block_id)).toEqual(['reason']);
  expect(await slack.day.milestone('501', 'handling')).toBe('15:07 held');
  const sent = submissionPayload({ user: ines, userName: 'ines' }, form, { reason: 'gap checked\nby hand' });
  expect((await slack.http().action(sent)).body).toBe('');
  expect(await slack.day.milestone('501', 'handling')).toBe('15:07 running');
  const told = await slack.heard(/501 goes on, decided by Ines/);
  expect(told.text).toContain('“gap checked by hand”');
  // Sent off twice it is one entry.
  expect((await slack.http().action(sent)).body).toBe('');
  expect(slack.said(/501 goes on, decided by Ines/)).toHaveLength(1);
});

it('without a reason, or from somebody else, the form says so and nothing is stored', async () => {
  const slack = await closedLate();
  for (const [user, reason, words] of [[ines, null, /Needs a reason/], [tomek, 'looks fine', /Only the foreman may decide that/]] as const) {
    const form = await pressedGoOn(slack, user);
    const answer = await slack.http().action(submissionPayload({ user, userName: user.toLowerCase() }, form, { reason }));
    const { errors } = refusalSchema.parse(JSON.parse(answer.body));
    expect(errors['reason']).toMatch(words);
  }
  expect(await slack.day.milestone('501', 'handling')).toBe('15:07 held');
  expect(slack.said(/goes on, decided/)).toEqual([]);
});
