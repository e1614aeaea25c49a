import { expect, it } from 'vitest';
import { Day } from '../support/day.js';

it('A16 warns before the open limit and falls silent once the panel is closed', async () => {
  const day = await Day.begin();
  await day.at('09:00');
  expect((await day.says('tomek', 'paste 501 P1')).text).toContain('10:00');
  await day.at('09:41');
  await day.says('tomek', 'closed 501');
  expect(await day.milestone('501', 'handling')).toBe('14:41 running');
  await day.at('10:30');
  expect(await day.posts('open-limit')).toEqual([]);
});

it('A16 says the limit coming and passed, and no more', async () => {
  const day = await Day.begin();
  await day.at('09:00');
  await day.says('tomek', 'paste 501 P1');
  await day.at('12:00');
  const posts = await day.posts('open-limit');
  expect(posts.map((post) => post.at)).toEqual([day.iso('09:50'), day.iso('10:00')]);
  expect(posts.map((post) => post.dueAt)).toEqual([day.iso('10:00'), day.iso('10:00')]);
});

it('A16 takes the next hotter row in warm air, and the straight line in ln(minutes) for strength', async () => {
  const day = await Day.begin();
  await day.at('09:00');
  await day.says('tomek', 'air 27');
  expect((await day.says('tomek', 'paste 501 P1')).text).toContain('09:30');
  await day.at('09:20');
  expect((await day.posts('open-limit')).map((post) => post.at)).toEqual([day.iso('09:20')]);
  await day.at('09:25');
  await day.says('tomek', 'closed 501');
  expect(await day.milestone('501', 'handling')).toBe('12:30 running');
});

it('A17 restarts the strength clock only, and leaves the passed open limit to the foreman', async () => {
  const day = await Day.begin();
  await day.at('09:00');
  await day.says('tomek', 'paste 501 P1');
  await day.at('09:41');
  await day.says('tomek', 'closed 501');
  await day.at('10:20');
  const reply = await day.says('tomek', 'moved 501');
  expect(reply.text).toMatch(/open limit 10:00 passed.*foreman decides/i);
  expect(await day.milestone('501', 'handling')).toBe('15:20 held');
  const asked = await day.posts('decision');
  expect(asked.map((post) => post.to)).toEqual(['ines']);
});

it('heat before the panel is closed starts no strength clock, and the answer still says by when to close', async () => {
  const day = await Day.begin();
  await day.at('08:00');
  await day.says('tomek', 'paste 501 P2');
  expect((await day.says('tomek', 'lamp 501 35')).text).toMatch(/Close the panel by 08:50/);
  expect(await day.milestone('501', 'open-limit')).toBe('08:50 running');
});
