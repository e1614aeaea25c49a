import { expect, it } from 'vitest';
import { CHAT_IDS, slackDay } from '../support/slack-day.js';
import { homeOpenedPayload, homePressPayload } from '../support/slack-stand-in/view-payloads.js';
import { until } from '../support/slack-stand-in/until.js';

const { tomek, wren, ines } = CHAT_IDS;

it('my cures and everything that waits, on opening and again when it has changed', async () => {
  const { day, http, platform, heard } = await slackDay('http', '2026-03-02T09:00');
  const home = (user: string): string => JSON.stringify(platform.views.homeOf(user)?.blocks ?? []);
  expect((await http().event(homeOpenedPayload(tomek))).status).toBe(200);
  await until('an empty home', () => home(tomek).includes('None of your cures'));
  await day.says('tomek', 'cure 501 K lamp 30');
  await day.says('wren', 'cure 502 P2 lamp 35');
  await until('the new cures', () => home(tomek).includes('502'));
  const [mine = '', all = ''] = home(tomek).split('All that waits');
  expect(mine).toMatch(/501/);
  expect(mine).not.toMatch(/502/);
  expect(all).toMatch(/501.*502/);
  // Whoever never opened it has none.
  expect(platform.views.homes.has(ines)).toBe(false);

  await day.at('10:00');
  await until('the check', () => home(tomek).includes('check now'));
  expect((await http().action(homePressPayload({ user: tomek, userName: 'tomek' }, 'check 501 j1 handling hard'))).status).toBe(200);
  expect((await heard(/confirmed 10:00 by Tomek/)).channel).toBe('D0TOMEK');
  expect(await day.milestone('501', 'handling')).toBe('10:00 confirmed');
  await until('no check any more', () => !home(tomek).includes('check now'));
});

it('what changes nothing on it is not shown again', async () => {
  const { day, http, platform } = await slackDay('http', '2026-03-02T09:00');
  await day.says('tomek', 'cure 501 K lamp 30');
  await http().event(homeOpenedPayload(wren));
  await until('the home', () => platform.views.homes.get(wren)?.length === 1);
  for (const question of ['who waits', 'when 501', 'help']) await day.says('wren', question);
  await day.at('09:20');
  // All open homes are looked through before the next one stands.
  await http().event(homeOpenedPayload(ines));
  await until('another home', () => platform.views.homes.has(ines));
  expect(platform.views.homes.get(wren)).toHaveLength(1);
});

it('a start of the program forgets nobody who looks: what changed is shown without opening it again', async () => {
  const { day, http, platform } = await slackDay('http', '2026-03-02T09:00');
  const home = (user: string): string => JSON.stringify(platform.views.homeOf(user)?.blocks ?? []);
  await day.says('tomek', 'cure 501 K lamp 30');
  await http().event(homeOpenedPayload(tomek));
  await until('the home', () => home(tomek).includes('501'));
  await day.killedUntil('10:00');
  await until('the check that came due meanwhile', () => home(tomek).includes('check now'));
  await day.says('wren', 'cure 502 P2 lamp 35');
  await until('the new cure', () => home(tomek).includes('502'));
  expect(platform.views.homes.has(wren)).toBe(false);
}, 90_000);
