import { expect, it } from 'vitest';
import { z } from 'zod';
import { CHAT_IDS, shopWithChatIds, slackDay, type SlackDay } from '../support/slack-day.js';
import type { OpenView } from '../support/slack-stand-in/views.js';
import { choicePayload, homeOpenedPayload, shortcutPayload, submissionPayload } from '../support/slack-stand-in/view-payloads.js';
import { until } from '../support/slack-stand-in/until.js';

const refusalSchema = z.object({ response_action: z.literal('errors'), errors: z.record(z.string(), z.string()) });
const { tomek } = CHAT_IDS;
const TOMEK = { user: tomek, userName: 'tomek' };

/** The form as it stands on Tomek's screen after the shortcut. */
async function opened({ http, platform }: SlackDay): Promise<OpenView> {
  const before = platform.views.newest?.id;
  expect((await http().action(shortcutPayload(TOMEK))).status).toBe(200);
  return until('the form', () => (platform.views.newest?.id === before ? null : platform.views.newest));
}

const initial = (open: OpenView, field: string): string | undefined => {
  const element = open.view.blocks.find((block) => block.block_id === field)?.element;
  return element?.type === 'plain_text_input' ? element.initial_value : element?.initial_option?.value;
};

it('a form sent off is the line that could have been typed, and fills itself in the next time', async () => {
  const slack = await slackDay('http', '2026-03-02T09:00');
  const form = await opened(slack);
  expect(form.view.blocks.map((block) => block.block_id)).toEqual(['job', 'joint', 'card', 'heat', 'setting', 'when', 'time']);
  expect([initial(form, 'card'), initial(form, 'heat'), initial(form, 'when')]).toEqual([undefined, 'air', '0']);
  const sent = submissionPayload(TOMEK, form, { job: '501', card: 'P2', heat: 'lamp A', setting: '35', when: '15' });
  const answer = await slack.http().action(sent);
  expect([answer.status, answer.body]).toEqual([200, '']);
  expect(await slack.day.milestone('501', 'handling')).toBe('10:05 running');
  const told = await slack.heard(/501 P2 closed 08:45/);
  expect(told.channel).toBe('D0TOMEK');
  await slack.heard(/^Tomek: 501 P2 closed/);

  const next = await opened(slack);
  expect([initial(next, 'card'), initial(next, 'heat'), initial(next, 'setting'), initial(next, 'when')]).toEqual(['P2', 'lamp A', '35', '0']);
});

it('the same form sent off twice is one entry', async () => {
  const slack = await slackDay('http', '2026-03-02T09:00');
  const sent = submissionPayload(TOMEK, await opened(slack), { job: '501', card: 'P2', heat: 'lamp A', setting: '35' });
  await slack.http().action(sent);
  await slack.day.at('09:05');
  const again = await slack.http().action(sent);
  expect([again.status, again.body]).toEqual([200, '']);
  expect(await slack.day.milestone('501', 'handling')).toBe('10:20 running');
  expect(slack.said(/^Tomek: 501 P2 closed/).length).toBeLessThanOrEqual(1);
});

it.each([
  [{ job: '501', card: 'P2', heat: 'lamp A', setting: '149' }, 'setting', /149/],
  [{ job: '501', card: 'P2', heat: 'lamp A', setting: '35', time: '11.40' }, 'time', /11:40 is still to come/],
  [{ job: '501', card: 'P2', heat: 'lamp A', setting: '35', time: 'the other day' }, 'time', /./],
  [{ job: '5 0 1', card: 'P2' }, 'job', /One job number/],
  [{ job: '501', card: 'P2', heat: 'lamp A' }, 'setting', /Which setting/],
  [{ job: '501', card: 'P2', setting: '35' }, 'heat', /no lamp or pad is chosen/],
])('a refused form says so at its field and stores nothing: %j', async (fields, field, words) => {
  const slack = await slackDay('http', '2026-03-02T09:00');
  const form = await opened(slack);
  const before = await slack.day.book();
  const answer = await slack.http().action(submissionPayload(TOMEK, form, fields));
  expect(answer.status).toBe(200);
  const { errors } = refusalSchema.parse(JSON.parse(answer.body));
  expect(Object.keys(errors)).toEqual([field]);
  expect(errors[field]).toMatch(words);
  expect(await slack.day.book()).toEqual(before);
  // Corrected, the same form goes through.
  const corrected = await slack.http().action(submissionPayload(TOMEK, form, { job: '501', card: 'P2', heat: 'lamp A', setting: '35' }));
  expect(corrected.body).toBe('');
  expect(await slack.day.milestone('501', 'handling')).toBe('10:20 running');
});

it('the depth of a bead is asked for where the card needs it', async () => {
  const slack = await slackDay('http', '2026-03-02T09:00');
  const form = await opened(slack);
  await slack.http().action(choicePayload(TOMEK, form, 'card', 'S1'));
  const changed = await until('the field', () => {
    const now = slack.platform.views.newest;
    return now !== null && now.view.blocks.some((block) => block.block_id === 'depth') ? now : null;
  });
  const answer = await slack.http().action(submissionPayload(TOMEK, changed, { job: '7214', card: 'S1', depth: '5', when: '5' }));
  expect(answer.body).toBe('');
  await slack.heard(/7214 S1 closed 08:55/);
});

it('the form through a real WebSocket', async () => {
  const slack = await slackDay('socket', '2026-03-02T09:00');
  const { platform } = slack;
  await until('the connection', () => platform.socket.open === 1);
  await platform.socket.deliver('interactive', shortcutPayload(TOMEK));
  const form = await until('the form', () => platform.views.newest);
  const refused = await platform.socket.deliver('interactive', submissionPayload(TOMEK, form, { job: '501', card: 'P2', heat: 'lamp A', setting: '149' }));
  expect(refused).toMatchObject({ response_action: 'errors' });
  await platform.socket.deliver('interactive', submissionPayload(TOMEK, form, { job: '501', card: 'P2', heat: 'lamp A', setting: '35' }));
  expect(await slack.day.milestone('501', 'handling')).toBe('10:20 running');
});

it('whoever reads German fills in a German form and is refused in German, in direct messages too', async () => {
  const german = shopWithChatIds((text) => text.replace('tomek: { name: Tomek, role: technician', 'tomek: { name: Tomek, role: technician, language: de'));
  const slack = await slackDay('http', '2026-03-02T09:00', german);
  await slack.http().event(homeOpenedPayload(tomek));
  await until('a German home', () => JSON.stringify(slack.platform.views.homeOf(tomek)?.blocks ?? []).includes('Keine deiner Fugen wartet auf etwas.'));
  const form = await opened(slack);
  expect(JSON.stringify(form.view)).toContain('Aushärtung beginnen');
  const refused = await slack.http().action(submissionPayload(TOMEK, form, { job: '5 0 1', card: 'P2' }));
  expect(refusalSchema.parse(JSON.parse(refused.body)).errors).toEqual({ job: 'Eine Auftragsnummer, etwa 501.' });
  await slack.http().action(choicePayload(TOMEK, form, 'card', 'S1'));
  await until('the German field', () => JSON.stringify(slack.platform.views.newest?.view).includes('Raupentiefe in mm'));
  slack.platform.fault('views.open', { kind: 'http', status: 503 });
  await slack.http().action(shortcutPayload(TOMEK));
  expect((await slack.heard(/^Das Formular ging nicht auf/)).channel).toBe('D0TOMEK');
});
