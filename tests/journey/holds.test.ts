import { expect, it } from 'vitest';
import { Day } from '../support/day.js';

it('a passed open limit stops every check until the foreman decides', async () => {
  const day = await Day.begin();
  await day.at('09:00');
  await day.says('tomek', 'paste 501 P1');
  await day.at('10:30');
  await day.says('tomek', 'closed 501');
  await day.says('tomek', 'read 501 65');
  await day.at('11:10');
  expect(await day.posts('handling')).toEqual([]);
  expect((await day.says('tomek', 'hard 501')).text).toMatch(/HELD, open limit was passed/);
  expect((await day.says('ines', 'who waits')).text).toMatch(/501 HELD, open limit was passed/);
  await day.says('ines', 'release 501 squeeze-out still soft');
  expect((await day.posts('handling')).map((post) => post.at)).toEqual([day.iso('11:10')]);
});

it('a check called soft stops what comes after it, and only that person or the foreman settles two answers', async () => {
  const day = await Day.begin();
  await day.at('08:00');
  await day.says('tomek', 'cure 501 P1');
  await day.says('tomek', 'read 501 65');
  await day.at('08:25');
  await day.says('wren', 'hard 501');
  expect((await day.says('tomek', 'soft 501')).text).toMatch(/two answers/i);
  await day.at('09:30');
  expect(await day.posts('full')).toEqual([]);
  expect(await day.milestone('501', 'full')).toMatch(/held$/);
  expect((await day.says('wren', 'hard 501')).text).toMatch(/two answers/i);
  expect(await day.milestone('501', 'handling')).toMatch(/held$/);
  await day.says('ines', 'release 501 bead cut, hard');
  expect(await day.milestone('501', 'handling')).toMatch(/confirmed$/);
  expect((await day.posts('full')).map((post) => post.at)).toEqual([day.iso('09:30')]);
});

it('too hot is said at once to owner and foreman, and holds until the foreman decides', async () => {
  const day = await Day.begin();
  await day.at('09:00');
  await day.says('tomek', 'cure 501 P1 lamp 65');
  await day.says('tomek', 'read 501 88');
  await day.at('09:11');
  expect((await day.posted()).filter((post) => post.includes('safety'))).toEqual(['09:00', '09:05', '09:10'].flatMap((at) => ['ines', 'tomek', 'wren'].map((to) => `${at} safety ${to}`)));
  expect(await day.milestone('501', 'handling')).toMatch(/held$/);
  await day.says('tomek', 'off 501');
  await day.says('ines', 'release 501 paint only, bond not touched');
  expect((await day.says('tomek', 'when 501')).text).not.toContain('HELD');
});

it.each([
  ['air 50', /Too hot for shop air/],
  ['read 501 58', /joint 58 °C but lamp at 30 °C/],
  ['off 501 2 hours ago', /no lamp was on at that time/],
  ['up 502', /NOT yet: handling strength is not checked/],
  ['lamp 501 149', /149 °F = 65 °C/],
  ['cure 503 P2 lamp 35 lamp A', /Lamp A is on 501 by my book/],
])('asks before it believes `%s`', async (line, answer) => {
  const day = await Day.begin();
  await day.at('09:00');
  await day.says('tomek', 'cure 501 P1 lamp 30 A');
  await day.says('tomek', 'cure 502 P2 lamp 35');
  const before = await day.book();
  expect((await day.says('tomek', line)).text).toMatch(answer);
  expect(await day.book()).toEqual(before);
});

it('a lamp that moves to another car is off where it was, in one entry', async () => {
  const day = await Day.begin();
  await day.at('09:00');
  await day.says('tomek', 'cure 501 P1 lamp 30 A');
  const asked = await day.says('tomek', 'cure 503 P2 lamp 35 lamp A');
  await day.program.press('tomek', asked, 'Moved here');
  expect(await day.milestone('503', 'handling')).toBe('10:20 running');
  expect((await day.says('tomek', 'when 501')).text).toContain('lamp A off');
});

it('heat counts to closing time, and on when somebody stays', async () => {
  const day = await Day.begin('2026-03-02T15:30');
  const reply = await day.says('tomek', 'cure 501 K lamp 30 5 min ago');
  expect(reply.text).toContain('16:25');
  await day.at('16:30');
  const late = await day.says('tomek', 'cure 502 K lamp 30');
  expect(late.text).toMatch(/needed until 17:30, the shop closes 17:00, and no lamp runs alone/);
  expect((await day.says('ines', 'who waits')).text).not.toMatch(/502/);
  await day.program.press('tomek', late, 'I stay');
  expect(await day.milestone('502', 'handling')).toBe('17:30 running');
});
