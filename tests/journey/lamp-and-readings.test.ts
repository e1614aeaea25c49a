import { expect, it } from 'vitest';
import { Day } from '../support/day.js';

// Scenarios of the main job against the built program, on the example cards (invented figures).
// Card K carries the check values "common practice, no source": lamp 30 for 60 min to initial strength,
// then lamp 60 for 90 min to final strength; 48 h unheated.

it('A01 says handling strength at 10:00 to Tomek and to nobody else', async () => {
  const day = await Day.begin();
  await day.at('09:00');
  const reply = await day.says('tomek', 'cure 501 K lamp 30');
  expect(reply.text).toContain('10:00');
  expect(reply.text).toContain('example card');
  await day.at('10:00');
  expect(await day.posted()).toEqual(['10:00 handling tomek']);
  expect(await day.milestone('501', 'handling')).toBe('10:00 due');
});

it('A02 counts the second stage from the minute of turning up', async () => {
  const day = await Day.begin();
  await day.at('09:00');
  await day.says('tomek', 'cure 501 K lamp 30');
  await day.at('10:04');
  expect((await day.says('tomek', 'hard 501')).text).toContain('confirmed');
  await day.at('10:07');
  expect((await day.says('tomek', 'up')).text).toContain('11:37');
  await day.at('11:37');
  const [full] = await day.posts('full');
  expect(full?.dueAt).toBe(day.iso('11:37'));
  expect(full?.reply.text).toMatch(/lamp off/i);
  expect(full?.reply.text).toMatch(/bead/);
  expect(full?.reply.buttons.map((button) => button.label)).toContain('Hard');
});

it('A04 keeps both times of a late entry', async () => {
  const day = await Day.begin();
  await day.at('09:20');
  const reply = await day.says('wren', 'started 20 min ago 501 K lamp 30');
  expect(reply.text).toContain('09:00');
  expect(await day.milestone('501', 'handling')).toBe('10:00 running');
});

it('A05 counts air from the minute the lamp was lost', async () => {
  const day = await Day.begin();
  await day.at('08:00');
  await day.says('tomek', 'cure 502 P1');
  await day.says('tomek', 'read 502 30');
  expect(await day.milestone('502', 'handling')).toBe('10:30 running');
  await day.at('09:15');
  const reply = await day.says('tomek', 'off 502');
  expect(reply.text).toContain('11:45');
  expect(reply.text).toContain('10:30');
  expect(await day.milestone('502', 'handling')).toBe('11:45 running');
  expect(await day.share('502', 'handling')).toBeCloseTo(0.5, 9);
});

it('A06 counts an unknown gap from the last sign of life, and shows the sum', async () => {
  const day = await Day.begin();
  await day.at('08:00');
  await day.says('tomek', 'cure 502 P1');
  await day.says('tomek', 'read 502 30');
  await day.at('08:30');
  await day.says('wren', 'on 502');
  await day.at('09:15');
  await day.says('wren', '502 lamp was off dont know when');
  await day.at('09:30');
  await day.says('wren', 'read 502 30');
  expect(await day.milestone('502', 'handling')).toBe('11:00 running');
  const why = (await day.says('wren', 'why 502')).text;
  expect(why).toContain('30 of 150 min = 20 %');
  expect(why).toContain('60 of 300 min = 20 %');
});

it('A07 sleeps when it is too cold, and wakes with the reading', async () => {
  const day = await Day.begin();
  await day.at('08:00');
  await day.says('tomek', 'air 14');
  await day.says('tomek', 'cure 502 P1');
  await day.at('10:00');
  const asleep = await day.says('tomek', 'when 502');
  expect(asleep.text).toMatch(/asleep, too cold \(needs 15 °C\), 0 %/);
  expect(await day.milestone('502', 'handling')).toBe('- asleep');
  await day.says('tomek', 'read 502 30');
  expect(await day.milestone('502', 'handling')).toBe('12:30 running');
});

it('A10 reads a decimal comma, and keeps a bare-metal reading without counting it', async () => {
  const day = await Day.begin();
  await day.at('08:00');
  await day.says('tomek', 'cure 503 P1');
  expect((await day.says('tomek', 'read 503 30,5 tape')).text).toContain('30.5');
  const before = await day.milestone('503', 'handling');
  const bare = await day.says('tomek', 'read 503 70 bare');
  expect(bare.text).toContain('not counted');
  expect(bare.text).toMatch(/tape or a contact probe/);
  expect(await day.milestone('503', 'handling')).toBe(before);
});
