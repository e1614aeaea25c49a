import { expect, it } from 'vitest';
import { Day } from '../support/day.js';

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

it('a press comes from a button that was offered; one on an answered question says who had answered', async () => {
  const day = await Day.begin();
  await day.at('09:00');
  const entry = await day.says('tomek', 'cure 501 K lamp 30');
  await day.at('10:00');
  const [asked] = await day.posts('handling');
  if (asked === undefined) throw new Error('nothing was asked');
  await expect(day.program.press('tomek', { ...asked.reply, id: 'page:nobody' }, 'Hard')).rejects.toThrow(/409[^]*not known here any more/);
  await expect(day.program.press('tomek', { ...entry, buttons: asked.reply.buttons }, 'Hard')).rejects.toThrow(/400[^]*No button of that answer says this/);
  expect(await day.milestone('501', 'handling')).toBe('10:00 due');
  expect((await day.program.press('tomek', asked.reply, 'Hard')).text).toContain('confirmed');
  expect((await day.program.press('wren', asked.reply, 'Hard')).text).toMatch(/already|Tomek/);
  await day.killedUntil('10:01');
  expect((await day.program.press('tomek', entry, 'Undo')).text).not.toMatch(/not known/);
});
