import { expect } from 'vitest';
import { posted, scenario } from '../support/told-day.js';

// Scenarios of readings, units and cures typed on the wrong job against the built program, by either way in; the cards are examples with
// invented figures.

const MONDAY = '2026-03-02T';

scenario('A09 a lamp at 149 without a unit is asked about and counts for nothing; 149 °F is 65 °C', `${MONDAY}09:00`, async (day) => {
  await day.says('tomek', 'cure 501 P1');
  const asked = await day.says('tomek', 'lamp 149');
  expect(asked.text).toMatch(/^149 what\?.*149 °F = 65 °C\. Nothing counted yet\./);
  expect(asked.labels).toContain('149 °F');
  expect((await day.says('tomek', 'lamps')).text).not.toContain('501');
  expect((await day.says('tomek', 'when 501')).text).toMatch(/^501 P1, Tomek, air 20 °C\.\nHandling strength earliest 14:00/);
  expect(await day.milestone('501', 'handling')).toBe('14:00 running');
  expect((await day.says('tomek', 'lamp 149F')).text).toMatch(/^501 lamp 149 °F = 65 °C since 09:00/);
  expect((await day.says('tomek', 'lamps')).text).toMatch(/501 65 °C/);
  // A setting is no reading: only the air counts still.
  expect(await day.milestone('501', 'handling')).toBe('14:00 running');
  await day.says('tomek', 'undo');
  expect((await asked.press('tomek', '149 °F')).text).toMatch(/^501 lamp .*65 °C.* since 09:00/);
});

scenario('A10 a decimal comma, and a reading on bare metal that counts for nothing', `${MONDAY}08:00`, async (day) => {
  await day.says('tomek', 'cure 503 P1');
  expect((await day.says('tomek', 'read 503 30,5 tape')).text).toMatch(/^503 reading 30\.5 °C\.\nHandling strength 10:25 by the clock/);
  const bare = await day.says('tomek', 'read 503 70 bare');
  expect(bare.text).toMatch(/^503 reading 70 °C on bare metal noted, not counted\.[^]*Use matt tape or a contact probe\./);
  expect(await day.milestone('503', 'handling')).toBe('10:25 running');
  await day.at('10:25');
  expect(await posted(day, 'handling')).toEqual(['10:25 handling tomek']);
});

scenario('A11 a cure on the wrong job goes over with its times', `${MONDAY}08:20`, async (day) => {
  await day.says('wren', 'cure 7219 T1');
  expect(await day.milestone('7219', 'sand')).toBe('08:50 running');
  await day.at('08:24');
  expect((await day.says('wren', 'move 7219>7211')).text).toMatch(/^7211 T1 moved here from 7219, start 08:20\. Sanding time earliest 08:50/);
  expect(await day.milestone('7211', 'sand')).toBe('08:50 running');
  expect(await day.cures('7219')).toEqual([]);
  expect((await day.says('tomek', 'why 7219')).text).toBe('7219: T1 went to 7211, entered here by mistake (moved 08:24 by Wren). Nothing runs here.');
  expect((await day.says('tomek', 'why 7211')).text).toMatch(/from 08:20:[^]*Entered as 7219 by mistake and moved here, times kept\./);
  expect((await day.says('tomek', 'who waits')).text).toMatch(/^7211 sanding time 08:50, Wren/);
  await day.at('08:50');
  expect((await day.posts()).map(({ at, to, text }) => `${at} ${to} ${text.split(' ')[0] ?? ''}`)).toEqual(['08:50 wren 7211']);
});
