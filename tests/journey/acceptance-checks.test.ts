import { expect } from 'vitest';
import { posted, scenario, theOnly, type Told } from '../support/told-day.js';

// Scenarios of checks and their reminders against the built program, by either way in; the cards are examples with invented figures.

const MONDAY = '2026-03-02T';
const withAnaAndMo = (shop: string): string => shop.replace('\n  wren: {', '\n  ana: { name: Ana, role: technician }\n  mo: { name: Mo, role: technician }\n  wren: {');
const REMINDED = ['12:03 handling tomek', '12:13 handling tomek', '12:33 handling tomek', '12:53 handling ines'];

scenario('A12 two answers two seconds apart: held as soft, Ines asked once, nothing about clamps', `${MONDAY}13:00`, async (day) => {
  await day.says('tomek', 'cure 501 K lamp 30');
  await day.at('14:02:10');
  await day.says('ana', 'hard 501');
  await day.at('14:02:12');
  const second = await day.says('mo', 'soft 501');
  expect(second.text).toMatch(/two answers, Ana said otherwise\. Held as soft\./);
  expect(second.text).not.toMatch(/clamp/i);
  expect(await day.milestone('501', 'handling')).toBe('14:17 held');
  expect(await day.milestone('501', 'full')).toBe('- held');
  const [decision, told, ...more] = await day.posts('decision');
  if (decision === undefined || told === undefined) throw new Error('nobody was told');
  expect([decision.to, told.to, more]).toEqual(['ines', 'ana', []]);
  expect(told.text).toMatch(/your hard does not count yet, somebody said soft\. Leave everything as it is/);
  expect(decision.text).toMatch(/501 handling strength: two answers, held as soft\. You settle it\.\nAna hard 14:02, Mo soft 14:02/);
  expect(await posted(day)).toEqual(['14:00 handling tomek', '14:02 decision ines', '14:02 decision ana']);
  expect((await day.says('wren', 'when 501')).text).toMatch(/Handling strength 14:17 HELD, two answers, held as soft/);
  await day.at('14:45');
  expect(await posted(day, 'decision')).toEqual(['14:02 decision ines', '14:02 decision ana']);
  expect((await day.posts()).filter(({ text }) => /clamp/i.test(text))).toEqual([]);
  expect(await day.milestone('501', 'handling')).toBe('14:17 held');
  expect((await decision.press('ines', 'Hard')).text).toMatch(/handling strength confirmed 14:45 by Ines/);
}, withAnaAndMo);

scenario('A13 two taps within a second: one entry, and the other sees whose it is', `${MONDAY}09:00`, async (day) => {
  await day.says('tomek', 'cure 501 K lamp 30');
  await day.at('10:00');
  const question = await theOnly(day, 'handling');
  const answers = await Promise.all([question.press('ana', 'Hard'), question.press('mo', 'Hard')]);
  const first = byWhom(answers, /confirmed 10:00 by (\w+)\./);
  expect(['Ana', 'Mo']).toContain(first);
  expect(byWhom(answers, /already answered by (\w+) 10:00\. Nothing changed\./)).toBe(first);
  expect(await day.milestone('501', 'handling')).toBe('10:00 confirmed');
  expect((await day.says('ines', 'when 501')).text).toContain(`Handling strength confirmed 10:00 by ${first}.`);
  await day.at('10:09');
  expect(await posted(day)).toEqual(['10:00 handling tomek']);
}, withAnaAndMo);

scenario('A14 nobody answers: three times to the owner, once to the foreman, then only in lists', `${MONDAY}11:03`, async (day) => {
  await day.says('tomek', 'cure 501 K lamp 30');
  await day.at('12:02');
  expect(await posted(day)).toEqual([]);
  await day.at('16:59');
  expect(await posted(day)).toEqual(REMINDED);
  expect((await day.posts()).map(({ text }) => /due 12:03|waits since 12:03/.test(text))).toEqual([true, true, true, true]);
  expect(await day.milestone('501', 'handling')).toBe('12:03 due');
  expect((await day.says('ines', 'who waits')).text).toMatch(/^501 check now, handling strength due 12:03 \(4 h 56 ago\), Tomek/);
  await day.at('2026-03-03T10:00');
  expect(await posted(day)).toEqual([...REMINDED, '17:00 bundle channel', '2026-03-03T07:30 bundle channel']);
  expect(await day.milestone('501', 'handling')).toBe('12:03 due');
});

scenario('A15 down while it came due: said once with its true time, and the repeats count from then', `${MONDAY}11:03`, async (day) => {
  await day.says('tomek', 'cure 501 K lamp 30');
  await day.at('11:50');
  await day.killedUntil('12:20');
  const late = await theOnly(day, 'handling');
  expect(late.text).toMatch(/501 handling strength due 12:03[^]*Said 12:20: I was down when it was due\./);
  expect(await posted(day)).toEqual(['12:20 handling tomek']);
  await day.killedUntil('12:21');
  expect(await posted(day)).toEqual(['12:20 handling tomek']);
  await day.at('14:00');
  expect(await posted(day)).toEqual(['12:20 handling tomek', '12:30 handling tomek', '12:50 handling tomek', '13:10 handling ines']);
  expect(await day.milestone('501', 'handling')).toBe('12:03 due');
});

/** The name in the one answer that says so. */
function byWhom(answers: readonly Told[], words: RegExp): string {
  const [name, ...others] = answers.flatMap(({ text }) => words.exec(text)?.[1] ?? []);
  if (name === undefined || others.length > 0) throw new Error(`Not one answer like ${words.source}: ${answers.map(({ text }) => text).join(' // ')}`);
  return name;
}
