import { expect, it } from 'vitest';
import { Day } from '../support/day.js';

it('a move is said again for the right car, survives a kill, and can be taken back', async () => {
  const day = await Day.begin();
  await day.at('08:20');
  await day.says('wren', 'cure 7219 T1');
  await day.at('08:52');
  const moved = await day.says('wren', 'move 7219>7211');
  expect((await day.posts('sand')).map((post) => `${post.at.slice(11, 16)} ${post.about.job}`)).toEqual(['08:50 7219', '08:52 7211']);
  await day.killedUntil('08:54');
  expect(await day.milestone('7211', 'sand')).toBe('08:50 due');
  await day.program.press('wren', moved, 'Undo');
  expect((await day.program.job('7211')).cures).toEqual([]);
  expect(await day.milestone('7219', 'sand')).toBe('08:50 due');
});

it.each([
  ['move 7219>7211', /7219: nothing runs there|No open job/],
  ['can i sand 7211', /nothing entered about 7211: no clock runs/],
])('changes nothing by `%s` on cars that nobody entered', async (line, answer) => {
  const day = await Day.begin();
  const before = await day.book();
  expect((await day.says('wren', line)).text).toMatch(answer);
  expect(await day.book()).toEqual(before);
});
