import { expect, it } from 'vitest';
import { Day } from '../support/day.js';

it('A13 takes the first of two taps; the other person sees whose it was', async () => {
  const day = await Day.begin();
  await day.at('09:00');
  for (const name of ['Ana', 'Mo']) {
    await day.says(name, 'who waits');
    await day.says('ines', `adopt ${name} technician`);
  }
  await day.says('tomek', 'cure 501 K lamp 30');
  await day.at('10:00');
  const [post] = await day.posts('handling');
  if (post === undefined) throw new Error('no post');
  const [first, second] = [await day.program.press('Ana', post.reply, 'Hard'), await day.program.press('Mo', post.reply, 'Hard')];
  expect(first.text).toContain('confirmed');
  expect(second.text).toMatch(/already.*Ana/);
  expect(await day.milestone('501', 'handling')).toBe('10:00 confirmed');
});

it('A14 asks the owner three times and the foreman once, and never confirms by silence', async () => {
  const day = await Day.begin();
  await day.at('08:33');
  await day.says('tomek', 'cure 501 P1');
  await day.says('tomek', 'read 501 30');
  await day.at('10:00');
  await day.says('tomek', 'on 501');
  await day.at('13:00');
  const posts = (await day.posts('handling')).map((post) => `${post.at.slice(11, 16)} ${post.to}`);
  expect(posts).toEqual(['11:03 tomek', '11:13 tomek', '11:33 tomek', '11:53 ines']);
  expect(await day.milestone('501', 'handling')).toBe('11:03 due');
  expect((await day.says('ines', 'who waits')).text).toMatch(/501.*check now.*11:03.*Tomek/);
});

it('R15 asks again after a quarter of the wait, and the second soft is for the foreman', async () => {
  const day = await Day.begin();
  await day.at('09:00');
  await day.says('tomek', 'cure 501 K lamp 30');
  await day.at('10:00');
  expect((await day.says('tomek', 'soft 501')).text).toContain('10:15');
  await day.at('10:15');
  expect((await day.posts('handling')).map((post) => post.at)).toEqual([day.iso('10:00'), day.iso('10:15')]);
  await day.says('tomek', 'soft 501');
  expect(await day.milestone('501', 'handling')).toMatch(/held$/);
  expect((await day.posts('decision')).map((post) => post.to)).toEqual(['ines']);
  expect((await day.says('tomek', 'hard 501')).text).toMatch(/foreman/);
  expect((await day.says('ines', 'hard 501')).text).toContain('confirmed');
});

it('refuses a check before the time, and says when', async () => {
  const day = await Day.begin();
  await day.at('09:00');
  await day.says('tomek', 'cure 501 K lamp 30');
  const reply = await day.says('tomek', 'hard 501');
  expect(reply.text).toMatch(/NOT yet.*10:00/);
  expect(await day.milestone('501', 'handling')).toBe('10:00 running');
});
