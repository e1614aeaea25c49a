import { expect } from 'vitest';
import { posted, scenario } from '../support/told-day.js';

// Scenarios of clear coat and sealant against the built program, by either way in; the cards are examples with invented figures.

const MONDAY = '2026-03-02T';

scenario('A23 metal time: what is colder than 60 °C is not counted', `${MONDAY}11:02`, async (day) => {
  await day.says('tomek', 'cure 501 C1');
  await day.at('11:14');
  await day.says('tomek', 'hard 501');
  expect((await day.says('tomek', 'read 501 60')).text).toContain('Metal time 11:49 by the clock');
  await day.at('11:30');
  expect((await day.says('tomek', 'read 501 52')).text).toMatch(/Metal time waits for a metal reading, 45 % of the wait \(was 11:49\)/);
  expect(await day.milestone('501', 'dwell')).toBe('- asleep');
  await day.at('11:36');
  expect((await day.says('tomek', 'read 501 60')).text).toContain('Metal time 11:55 by the clock');
  await day.at('11:54');
  expect(await posted(day, 'dwell')).toEqual([]);
  await day.at('11:55');
  expect(await posted(day, 'dwell')).toEqual(['11:55 dwell tomek']);
});

scenario('A23 metal that nobody reads has no end time', `${MONDAY}11:02`, async (day) => {
  await day.says('tomek', 'cure 501 C1 lamp 70');
  await day.at('11:14');
  await day.says('tomek', 'hard 501');
  await day.at('13:00');
  const when = (await day.says('tomek', 'when 501')).text;
  expect(when).toMatch(/Metal time waits for a metal reading, 0 % of the wait/);
  expect(await day.milestone('501', 'dwell')).toBe('- asleep');
  await day.at('16:59');
  expect(await posted(day, 'dwell')).toEqual([]);
});

scenario('A24 a bead of 4 mm: 24 h for 3 mm, with the square of the depth, and no sooner with a lamp', `${MONDAY}08:00`, async (day) => {
  await day.says('tomek', 'air 20 rh 50');
  // 24 h × (4/3)² = 42 h 40 min: within 43 h, not the 32 h of a straight line.
  expect((await day.says('tomek', 'cure 7214 S1 4 mm')).text).toMatch(/Through-cure time earliest Wed 02:40, likely later/);
  expect(await day.milestone('7214', 'through')).toBe('2026-03-04T02:40 running');
  expect((await day.says('tomek', 'why 7214')).text).toMatch(/24 h for 3 mm, twice the depth takes four times as long; here 4 mm/);
  expect((await day.says('tomek', 'lamp 7214 35')).text).toContain('Heat alone gives no hour here: it dries the air.');
  await day.at('08:20');
  await day.says('tomek', 'read 7214 35');
  expect(await day.milestone('7214', 'through')).toBe('2026-03-04T02:40 running');
});
