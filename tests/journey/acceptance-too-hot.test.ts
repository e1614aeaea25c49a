import { expect } from 'vitest';
import { posted, scenario, theOnly, type ToldDay } from '../support/told-day.js';

// A08 against the built program, by either way in; the card is an example with invented figures.

const MONDAY = '2026-03-02T';
const PEOPLE = '\n  ana: { name: Ana, role: technician }\n  mo: { name: Mo, role: technician }\n  wren: {';
const SHIFTS = '\nshifts:\n  - { name: early, days: mon-fri, hours: 06:00-14:00, people: [ines, tomek, ana] }\n  - { name: late, days: mon-fri, hours: 14:00-22:00, people: [mo, wren] }\n';
const inShifts = (shop: string): string => shop.replace('\n  wren: {', PEOPLE) + SHIFTS;
const alarms = (...times: string[]): string[] => times.flatMap((time) => ['ana', 'ines', 'tomek'].map((to) => `${time} safety ${to}`));

/** P1 in its second stage: handling 25 min and full 80 min at 65 °C, so 75 min of 80 are done at 09:15. */
async function tooHotInStageTwo(day: ToldDay): Promise<void> {
  await day.says('tomek', 'cure 501 P1 lamp 65');
  expect((await day.says('tomek', 'read 501 65')).text).toContain('Handling strength 08:25 by the clock');
  await day.at('08:25');
  await day.says('tomek', 'hard 501');
  expect(await day.milestone('501', 'full')).toBe('09:20 running');
  await day.at('09:00');
  await day.says('tomek', 'on 501');
  await day.at('09:15');
  expect((await day.says('tomek', 'read 501 88')).text).toMatch(/^501 TOO HOT 88 °C, limit 85 °C\./);
  expect(await posted(day, 'safety')).toEqual(alarms('09:15'));
  expect(await day.milestone('501', 'full')).toBe('- held');
}

scenario('A08 too hot: owner, foreman and shift at once and every 5 min, and no milestone until the foreman decides', `${MONDAY}08:00`, async (day) => {
  await tooHotInStageTwo(day);
  await day.at('09:26');
  expect((await posted(day, 'safety')).sort()).toEqual(alarms('09:15', '09:20', '09:25'));
  const [alarm] = (await day.posts('safety')).slice(-1);
  await alarm?.press('tomek', 'Lamp off');
  expect((await day.says('tomek', 'hard 501')).text).toMatch(/HELD, too hot/);
  expect((await day.says('tomek', 'release 501 looks good')).text).toMatch(/Only the foreman may decide that \(Ines\)/);
  // Nothing of 88 °C counts; the missing 5 of 80 are 135 of 2160 min at 20 °C, from 09:26.
  await day.at('11:45');
  expect(await posted(day, 'safety')).toHaveLength(9);
  expect(await posted(day, 'full')).toEqual([]);
  expect(await day.milestone('501', 'full')).toBe('11:41 held');
  expect((await day.says('wren', 'when 501')).text).toMatch(/Full strength 11:41 HELD, too hot/);
  expect((await day.says('ines', 'release 501 only the paint, bond looked at')).text).toMatch(/501 goes on, decided by Ines/);
  const full = await theOnly(day, 'full');
  expect([full.at, full.to, /full strength due 11:41/.test(full.text)]).toEqual(['11:45', 'tomek', true]);
  expect(await day.milestone('501', 'full')).toBe('11:41 due');
}, inShifts);

scenario('A08 too hot by a typing error: the corrected reading ends alarm and hold', `${MONDAY}08:00`, async (day) => {
  await tooHotInStageTwo(day);
  await day.at('09:16');
  expect((await day.says('tomek', 'sory 58')).text).toMatch(/501 reading 58 °C/);
  // The colder of 65 and 58 since 08:00; at 58 °C, a straight line in ln(minutes) between 40 and 65, full takes 132.1 min.
  expect(await day.milestone('501', 'full')).toBe('10:13 running');
  await day.at('10:12');
  expect([...(await posted(day, 'safety')), ...(await posted(day, 'full'))]).toEqual(alarms('09:15'));
  await day.at('10:13');
  expect(await posted(day, 'full')).toEqual(['10:13 full tomek']);
}, inShifts);

scenario('A08 a colder reading after the hot one is no correction: the hold stays until the hot one is taken back', `${MONDAY}08:00`, async (day) => {
  await day.says('tomek', 'cure 501 P1 lamp 65');
  const hot = await day.says('tomek', 'read 501 88');
  await day.at('08:01');
  await day.says('tomek', 'read 501 58');
  expect(await day.milestone('501', 'handling')).toMatch(/held$/);
  await hot.press('tomek', 'Typing error');
  expect(await day.milestone('501', 'handling')).toMatch(/running$/);
  await day.at('08:06');
  expect((await posted(day, 'safety')).sort()).toEqual(['08:00 safety ines', '08:00 safety tomek', '08:00 safety wren']);
});
