import { expect } from 'vitest';
import { posted, scenario, theOnly } from '../support/told-day.js';

// Scenarios of the main job against the built program, each by the local page and by signed requests of the chat platform. The cards are
// examples with invented figures. Card K carries check values (common practice, no source): lamp 30 for 60 min to initial strength, then
// lamp 60 for 90 min to final strength; 48 h unheated.

const MONDAY = '2026-03-02T';
const warmNights = (shop: string): string => shop.replace(/^night: .*$/m, 'night: 20');

scenario('A01 handling strength at 10:00, one message to Tomek and none to others', `${MONDAY}09:00`, async (day) => {
  const answer = await day.says('tomek', 'cure 501 K lamp 30');
  expect(answer.text).toMatch(/^501 K closed 09:00, lamp 30 °C\.\nHandling strength 10:00 by the clock\.[^]*K is an example card, not your data sheet\./);
  await day.at('09:59');
  expect(await posted(day)).toEqual([]);
  await day.at('10:00');
  await day.at('10:09');
  expect(await posted(day)).toEqual(['10:00 handling tomek']);
  expect(await day.milestone('501', 'handling')).toBe('10:00 due');
});

scenario('A02 full strength counts from turning up, and its message asks for lamp off and a check', `${MONDAY}09:00`, async (day) => {
  await day.says('tomek', 'cure 501 K lamp 30');
  await day.at('10:04');
  expect((await day.says('tomek', 'hard 501')).text).toMatch(/handling strength confirmed 10:04 by Tomek/);
  await day.at('10:07');
  expect((await day.says('tomek', 'up')).text).toMatch(/501 lamp 60 °C since 10:07\.\nFull strength 11:37 by the clock\./);
  await day.at('11:36');
  expect(await posted(day, 'full')).toEqual([]);
  await day.at('11:37');
  expect(await posted(day)).toEqual(['10:00 handling tomek', '11:07 still-on tomek', '11:37 full tomek']);
  const full = await theOnly(day, 'full');
  expect(full.text).toMatch(/full strength due 11:37[^]*Lamp off\. Try the witness bead/);
  expect(full.labels).toEqual(expect.arrayContaining(['Hard', 'Soft']));
  expect(await day.milestone('501', 'full')).toBe('11:37 due');
});

scenario('A03 nothing on Sunday; Monday\'s one bundle says the true time', '2026-03-06T16:00', async (day) => {
  expect((await day.says('tomek', 'cure 501 K')).text).toMatch(/Full strength earliest Sun 16:00, likely later\./);
  expect(await day.milestone('501', 'full')).toBe('2026-03-08T16:00 running');
  await day.at('2026-03-09T07:29');
  expect(await posted(day)).toEqual(['17:00 bundle channel']);
  expect(await day.milestone('501', 'full')).toBe('2026-03-08T16:00 due');
  await day.at('2026-03-09T07:30');
  await day.at('2026-03-09T07:39');
  expect(await posted(day)).toEqual(['17:00 bundle channel', '2026-03-09T07:30 bundle channel']);
  const [closing, opening] = await day.posts('bundle');
  expect(closing?.text).toMatch(/1 due before opening[^]*501 full strength Sun 16:00, Tomek/);
  expect(opening?.text).toMatch(/1 check due[^]*501 check now, full strength due Sun 16:00 \(15 h 30 ago\), Tomek/);
}, warmNights);

scenario('A04 a start said 20 min late counts from 20 min ago', `${MONDAY}09:20`, async (day) => {
  const answer = await day.says('wren', 'started 20 min ago 501 K lamp 30');
  expect(answer.text).toMatch(/^501 K closed 09:00, lamp 30 °C\.\nHandling strength 10:00 by the clock\./);
  expect(await day.milestone('501', 'handling')).toBe('10:00 running');
  expect(await day.share('501', 'handling')).toBeCloseTo(1 / 3, 9);
  expect((await day.says('ines', 'why 501')).text).toMatch(/from 09:00:[^]*09:00-09:20 lamp 30 °C: 20 of 60 min = 33\.3 %/);
  expect((await day.says('ines', 'why 501')).text).toContain('Entered 09:20.');
  await day.at('10:00');
  expect(await posted(day)).toEqual(['10:00 handling wren']);
});

scenario('A05 a lamp that is lost leaves half the wait to the air', `${MONDAY}08:00`, async (day) => {
  await day.says('tomek', 'cure 502 P1');
  expect((await day.says('tomek', 'read 502 30')).text).toContain('Handling strength 10:30 by the clock');
  await day.at('09:15');
  expect((await day.says('tomek', 'off 502')).text).toMatch(/502 lamp off 09:15: air counts since\.\nHandling strength earliest 11:45, likely later \(was 10:30\)\./);
  expect(await day.share('502', 'handling')).toBeCloseTo(0.5, 9);
  expect((await day.says('tomek', 'why 502')).text).toMatch(/08:00-09:15 reading 30 °C: 75 of 150 min = 50 %\n.*09:15-11:45 usual air 20 °C: 150 of 300 min = 50 %/);
  await day.at('11:44');
  expect(await posted(day, 'handling')).toEqual([]);
  await day.at('11:45');
  expect(await posted(day, 'handling')).toEqual(['11:45 handling tomek']);
});

scenario('A06 a gap that nobody saw begin counts from the last sign of life', `${MONDAY}08:00`, async (day) => {
  await day.says('tomek', 'cure 502 P1');
  await day.says('tomek', 'read 502 30');
  await day.at('08:30');
  await day.says('wren', 'on 502');
  await day.at('09:15');
  expect((await day.says('wren', 'lamp was off dont know when')).text).toMatch(/502 lamp found off 09:15: heat counts only to 08:30\.\nHandling strength earliest 12:30/);
  await day.at('09:30');
  expect((await day.says('wren', 'read 502 30')).text).toContain('Handling strength 11:00 by the clock');
  expect(await day.share('502', 'handling')).toBeCloseTo(0.4, 9);
  const why = (await day.says('wren', 'why 502')).text;
  expect(why).toMatch(/08:00-08:30 reading 30 °C: 30 of 150 min = 20 %\n08:30-09:30 usual air 20 °C: 60 of 300 min = 20 %/);
  await day.at('10:59');
  expect(await posted(day, 'handling')).toEqual([]);
  await day.at('11:00');
  expect(await posted(day, 'handling')).toEqual(['11:00 handling tomek']);
});

scenario('A07 too cold: asleep at 0 %, and the reading wakes it', `${MONDAY}08:00`, async (day) => {
  await day.says('tomek', 'air 14');
  await day.says('tomek', 'cure 502 P1');
  await day.at('10:00');
  expect((await day.says('tomek', 'when 502')).text).toMatch(/Handling strength asleep, too cold \(needs 15 °C\), 0 % of the wait/);
  expect(await day.milestone('502', 'handling')).toBe('- asleep');
  expect(await day.share('502', 'handling')).toBe(0);
  expect((await day.says('tomek', 'read 502 30')).text).toContain('Handling strength 12:30 by the clock');
  await day.at('12:29');
  expect(await posted(day, 'handling')).toEqual([]);
  await day.at('12:30');
  expect(await posted(day, 'handling')).toEqual(['12:30 handling tomek']);
});
