import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { tempFolder } from '../support/program.js';
import { Day } from '../support/day.js';

/** Each kind of reminder: what leads to it, when it is due, and the words it is known by. */
const CASES: readonly { kind: string; lead: (day: Day) => Promise<void>; before: string; due: string; back: string; to: string }[] = [
  { kind: 'open-limit', lead: async (day) => { await day.at('09:00'); await day.says('tomek', 'paste 501 P1'); }, before: '09:49', due: '10:00', back: '09:55', to: 'tomek' },
  { kind: 'open-limit', lead: async (day) => { await day.at('09:00'); await day.says('tomek', 'paste 501 P1'); }, before: '09:59', due: '10:00', back: '10:10', to: 'tomek' },
  { kind: 'reading', lead: async (day) => { await day.at('09:00'); await day.says('tomek', 'cure 501 P1 lamp 30'); }, before: '09:19', due: '09:20', back: '09:35', to: 'tomek' },
  { kind: 'still-on', lead: async (day) => { await day.at('09:00'); await day.says('tomek', 'cure 501 P1 lamp 30'); await day.says('tomek', 'read 501 30'); }, before: '09:59', due: '10:00', back: '10:20', to: 'tomek' },
  { kind: 'handling', lead: async (day) => { await day.at('09:00'); await day.says('tomek', 'cure 501 K lamp 30'); }, before: '09:59', due: '10:00', back: '10:20', to: 'tomek' },
  { kind: 'full', lead: async (day) => { await day.at('09:00'); await day.says('tomek', 'cure 501 K lamp 30'); await day.at('10:04'); await day.says('tomek', 'hard 501'); await day.at('10:07'); await day.says('tomek', 'up'); await day.says('tomek', 'on 501'); }, before: '11:36', due: '11:37', back: '12:00', to: 'tomek' },
  { kind: 'stage', lead: async (day) => { await day.at('09:00'); await day.says('tomek', 'cure 501 K lamp 30'); await day.at('10:04'); await day.says('tomek', 'hard 501'); }, before: '10:13', due: '10:00', back: '10:30', to: 'tomek' },
  { kind: 'sand', lead: async (day) => { await day.at('09:00'); await day.says('tomek', 'cure 501 F1'); await day.says('tomek', 'read 501 60'); }, before: '09:44', due: '09:45', back: '10:00', to: 'tomek' },
  { kind: 'safety', lead: async (day) => { await day.at('09:00'); await day.says('tomek', 'cure 501 P1 lamp 65'); await day.says('tomek', 'read 501 88'); }, before: '09:04', due: '09:00', back: '09:20', to: 'tomek' },
  { kind: 'decision', lead: async (day) => { await day.at('09:00'); await day.says('tomek', 'paste 501 P1'); }, before: '09:59', due: '10:00', back: '10:20', to: 'ines' },
];

it.each(CASES)('a $kind post that fell into a kill -9 at $before comes once at $back, with its true time', async ({ kind, lead, before, due, back, to }) => {
  const day = await Day.begin();
  await lead(day);
  await day.at(before);
  const earlier = (await day.posts(kind)).length;
  await day.killedUntil(back);
  const posts = (await day.posts(kind)).slice(earlier).filter((post) => post.to === to);
  expect(posts).toHaveLength(1);
  expect(posts[0]?.dueAt).toBe(day.iso(due));
  expect(posts[0]?.at).toBe(day.iso(back));
  expect(posts[0]?.reply.text).toMatch(/I was down/);
  await day.killedUntil(back);
  expect((await day.posts(kind)).slice(earlier).filter((post) => post.to === to)).toHaveLength(1);
});

it('a bundle that fell into a kill -9 comes once', async () => {
  const day = await Day.begin('2026-03-02T16:00');
  await day.says('tomek', 'cure 501 P1');
  await day.killedUntil('17:20');
  const [bundle] = await day.posts('bundle');
  expect(bundle?.dueAt).toBe(day.iso('17:00'));
  expect(bundle?.reply.text).toMatch(/Meant for 17:00: I was down/);
  await day.killedUntil('17:40');
  expect(await day.posts('bundle')).toHaveLength(1);
});

it('ends cleanly on SIGTERM', async () => {
  const day = await Day.begin();
  expect(await day.end()).toBe(0);
});

it('what came due while it was down in the night waits for the opening', async () => {
  const day = await Day.begin('2026-03-02T15:00');
  await day.says('tomek', 'cure 501 K lamp 30 30 min ago');
  await day.at('15:20');
  await day.killedUntil('2026-03-02T22:00');
  expect((await day.posts('handling')).length).toBe(0);
  await day.at('2026-03-03T07:30');
  expect((await day.posts('handling')).length).toBe(0);
  expect((await day.posts('bundle')).at(-1)?.reply.text).toMatch(/501 check now, handling strength due Mon 15:30/);
});

it('plans every open job anew when the shop was changed while it was down', async () => {
  const warm = join(tempFolder(), 'shop.yaml');
  writeFileSync(warm, readFileSync('src/shop/example-shop.yaml', 'utf8').replace(/^air: .*$/m, 'air: 27'));
  const day = await Day.begin();
  await day.at('09:00');
  await day.says('tomek', 'paste 501 P1');
  await day.killedUntil('09:05', { CURECLERK_SHOP: warm });
  await day.at('09:30');
  expect((await day.posts('open-limit')).map((post) => post.at)).toEqual([day.iso('09:20'), day.iso('09:30')]);
});

it('counts the time without an answer from this round, not from one that was answered', async () => {
  const day = await Day.begin();
  await day.at('09:00');
  await day.says('tomek', 'cure 501 K lamp 30');
  await day.at('10:00');
  await day.says('tomek', 'hard 501');
  await day.at('10:05');
  await day.says('tomek', 'moved 501');
  await day.at('11:15');
  expect((await day.posts('handling')).at(-1)?.reply.text).toContain('No answer for 10 min');
});

it('says one message, not two, when both the lamp question and the check fell into the same gap', async () => {
  const day = await Day.begin();
  await day.at('08:00');
  await day.says('tomek', 'cure 501 P2 lamp 35');
  await day.killedUntil('09:40');
  expect(await day.posted()).toEqual(['09:40 handling tomek']);
});
