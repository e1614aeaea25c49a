import { expect, it } from 'vitest';
import { Day } from '../support/day.js';

// Questions about what could be, against the built program on the example cards (invented figures):
// whatever is asked, no row of any table changes and no forecast moves.

const QUESTIONS = [
  'what if 501',
  'what if 501 lamp 65',
  'what if 501 lamp 65 from 14:00',
  'what if 501 pad 40',
  'what if 501 air 25',
  'what if 501 lamp 150',
  'what if 501 lamp 90C',
  'what if 777',
  'when start 501 P1 ready fri 16:00',
  'latest start 501 handling by fri 16:00',
  'latest start 999 K by fri 16:00',
  'latest start 999 by fri 16:00',
];

it('answers what could be, stores nothing and moves no forecast', async () => {
  const day = await Day.begin();
  await day.at('09:00');
  await day.says('tomek', 'cure 501 P1');
  await day.at('10:00');
  await day.says('tomek', 'air 20');
  const before = [await day.book(), await day.milestone('501', 'handling')];
  for (const question of QUESTIONS) {
    const { text } = await day.says('tomek', question);
    expect(text.split('\n').length, question).toBeLessThanOrEqual(6);
    expect(text, question).not.toMatch(/not understood|needs /i);
  }
  expect([await day.book(), await day.milestone('501', 'handling')]).toEqual(before);
});

it('shows what a lamp would do, and does it at a tap', async () => {
  const day = await Day.begin();
  await day.at('09:00');
  await day.says('tomek', 'cure 501 P1');
  await day.at('10:00');
  const reply = await day.says('tomek', 'what if 501 lamp 65');
  // 80 of 300 min at 20 °C until the reading, then 25 × 0.733 = 18.3 min.
  expect(reply.text).toContain('nothing is stored. As it stands: handling 14:00');
  expect(reply.text).toContain('Lamp 65 °C from 10:00: handling 10:39, full 11:38, if a reading shows 65 °C by 10:20.');
  await day.program.press('tomek', reply, 'Lamp 65 °C');
  await day.at('10:20');
  await day.says('tomek', 'read 501 65');
  expect([await day.milestone('501', 'handling'), await day.milestone('501', 'full')]).toEqual(['10:39 running', '11:38 running']);
});

it('plans backwards for a job that does not exist yet, and what it says comes true', async () => {
  const day = await Day.begin('2026-03-06T07:00');
  await day.at('08:00');
  const { text } = await day.says('tomek', 'latest start 999 P1 by 16:00');
  expect(text).toContain('full strength by Fri 16:00 if closed by Fri 14:20 with lamp 65 °C');
  await day.at('14:20');
  await day.says('tomek', 'cure 999 P1 lamp 65');
  await day.at('14:40');
  await day.says('tomek', 'read 999 65');
  expect(await day.milestone('999', 'full')).toBe('16:00 running');
});

it('puts a typing error in °F right with a tap, and still stores nothing', async () => {
  const day = await Day.begin();
  await day.at('09:00');
  await day.says('tomek', 'cure 501 P1');
  const before = await day.book();
  const doubt = await day.says('tomek', 'what if 501 lamp 150');
  expect((await day.program.press('tomek', doubt, '150 °F')).text).toContain('Lamp 65.6 °C from 09:00: handling');
  expect(await day.book()).toEqual(before);
});
