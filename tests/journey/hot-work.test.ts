import { expect, it } from 'vitest';
import { Day } from '../support/day.js';

it('hot work after wax: STOP, the foreman at once and again, until it is taken back', async () => {
  const day = await Day.begin();
  await day.at('09:00');
  expect((await day.says('tomek', 'cure 7220 W1')).text).toMatch(/From now on no welding and no bake on this car/);
  await day.at('09:40');
  const reply = await day.says('tomek', 'weld 7220');
  expect(reply.text).toMatch(/^7220 STOP: no heat, no flame\. W1 is in this car since 09:00/);
  expect(reply.text).toMatch(/Nothing of it counts\. Ines is told at once/);
  await day.at('09:46');
  expect((await day.posted()).filter((post) => post.endsWith('ines'))).toEqual(['09:40 safety ines', '09:45 safety ines']);
  await day.program.press('tomek', reply, 'Not begun');
  await day.at('10:30');
  expect(await day.posts('safety')).toHaveLength(6);
  expect((await day.says('wren', 'can i weld 7220')).text).toMatch(/STOP/);
});

it('a fire watch has its own clock, through a kill, and ends with a look', async () => {
  const day = await Day.begin();
  await day.at('09:40');
  await day.says('tomek', 'weld 501');
  expect((await day.says('ines', 'who waits')).text).toMatch(/501 hot work goes on, fire watch to follow, Tomek/);
  await day.at('10:00');
  expect((await day.says('tomek', 'done 501 weld')).text).toMatch(/501 hot work over 10:00\. Fire watch 11:00 by the clock\./);
  await day.killedUntil('10:30');
  expect((await day.says('ines', 'who waits')).text).toMatch(/501 fire watch 11:00, Tomek/);
  await day.at('11:00');
  const [post] = await day.posts('fire-watch');
  expect(post?.reply.text).toMatch(/501 fire watch over by the clock 11:00: all cold, no smoke, no smell\?/);
  expect(await day.posted()).toEqual(['11:00 fire-watch ines', '11:00 fire-watch tomek']);
  await day.at('11:03');
  if (post === undefined) throw new Error('no post');
  expect((await day.program.press('tomek', post.reply, 'Clear')).text).toMatch(/Fire watch confirmed 11:03 by Tomek/);
  await day.at('12:00');
  expect(await day.posts('fire-watch')).toHaveLength(2);
  expect((await day.says('ines', 'who waits')).text).toMatch(/No car waits/);
});

it('another weld starts the watch again', async () => {
  const day = await Day.begin();
  await day.at('10:00');
  await day.says('tomek', 'done 501 weld');
  await day.at('10:40');
  await day.says('tomek', 'weld 501');
  await day.at('10:50');
  expect((await day.says('tomek', '501 weld done')).text).toMatch(/Fire watch 11:50/);
  await day.at('11:49');
  expect(await day.posts('fire-watch')).toEqual([]);
  expect(await day.milestone('501', 'fire-watch')).toBe('11:50 running');
});

it('smoke: the fire service first, the foreman at once, and the watch again from the foreman\'s word', async () => {
  const day = await Day.begin();
  await day.at('10:00');
  const over = await day.says('tomek', 'done 501 weld');
  await day.at('10:20');
  expect((await day.program.press('wren', over, 'Smoke')).text).toMatch(/501 SMOKE noted 10:20 by Wren\. Call the fire service first/);
  expect((await day.posts('safety')).map((post) => `${post.to} ${post.reply.text.split('\n')[0] ?? ''}`)).toContain('ines Call the fire service first, then everybody out. Put it out only without danger to yourself; local rules come first. 501 SMOKE reported 10:20 by Wren.');
  expect((await day.says('ines', 'who waits')).text).toMatch(/501 HELD, smoke reported, foreman decides \(since 10:20\)/);
  await day.at('10:24');
  const [alarm] = (await day.posts('safety')).filter((post) => post.to === 'ines');
  if (alarm === undefined) throw new Error('no alarm');
  expect((await day.program.press('ines', alarm.reply, 'Watch again')).text).toMatch(/smoke judged by Ines: the watch starts again\.\nFire watch 11:24/);
  await day.at('10:40');
  expect((await day.posts('safety')).map((post) => post.to).sort()).toEqual(['ines', 'tomek', 'wren']);
});

it('a watch that ends after closing asks who stays', async () => {
  const day = await Day.begin('2026-03-02T16:20');
  const begun = await day.says('tomek', 'weld 501');
  expect(begun.text).toMatch(/The shop closes before the fire watch is over\. Who stays until 17:20\?/);
  await day.at('16:40');
  const over = await day.says('tomek', 'done 501 weld');
  expect(over.text).toMatch(/Who stays until 17:40\?/);
  expect((await day.program.press('wren', over, 'I stay')).text).toMatch(/501 Wren stays for the fire watch\.\nFire watch 17:40/);
  await day.at('17:40');
  expect((await day.posts('fire-watch')).map((post) => post.at)).toEqual([day.iso('17:40'), day.iso('17:40')]);
});

it('heat that outlasts the shop after all is not counted past closing until a named person stays', async () => {
  const day = await Day.begin('2026-03-02T14:00');
  const reply = await day.says('tomek', 'start 430 p1 lamp 30');
  await day.at('15:58');
  const read = await day.says('tomek', 'read 430 30');
  expect(`${reply.text}\n${read.text}`).toMatch(/Never leave a lamp or pad alone/);
  expect((await day.says('ines', 'lamps')).text).toMatch(/430 30 °C, off at 17:00 unless somebody stays/);
  expect(await day.milestone('430', 'handling')).not.toMatch(/^1[78]:/);
  await day.says('wren', 'stay 430');
  expect(await day.milestone('430', 'handling')).toMatch(/^1[78]:/);
});
