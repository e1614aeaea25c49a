import { expect } from 'vitest';
import { posted, scenario, theOnly } from '../support/told-day.js';

// Scenarios of expired cartridges, damp metal and hot work against the built program, by either way in; the card and the procedure are
// examples with invented figures.

const MONDAY = '2026-03-02T';

scenario('A20 an expired cartridge: HOLD at the paste, and only the foreman goes on, with a reason', `${MONDAY}08:00`, async (day) => {
  await day.says('ines', 'begin 501 bonded-panel');
  await day.says('tomek', 'batch 501 55-B');
  expect((await day.says('tomek', 'expiry 501 02/26')).text).toMatch(/501 bond: expired: HOLD, 02\/26\./);
  const refused = /501 bond NOT yet: .*expired: HOLD \(02\/26\), only the foreman can go on, with a reason.*Nothing stored/;
  await day.says('tomek', 'opened 501 28.02.2026');
  for (const name of ['tomek', 'wren'] as const) expect((await day.says(name, 'paste 501 P1')).text).toMatch(refused);
  expect((await day.says('tomek', 'override 501 bond feels fine')).text).toMatch(/Only the foreman may decide that \(Ines\)/);
  expect((await day.says('ines', 'override 501 bond')).text).toMatch(/Needs a reason.*Nothing stored/);
  expect((await day.says('tomek', 'paste 501 P1')).text).toMatch(refused);
  expect(await day.cures('501')).toEqual([]);
  await day.says('ines', 'override 501 bond sheet gives three months more');
  const overridden = 'Overridden: bond, Ines 08:00: “sheet gives three months more”.';
  const pasted = (await day.says('tomek', 'paste 501 P1')).text;
  expect(pasted).toMatch(/^501 P1 paste on 08:00\.\nClose the panel by 09:00/);
  await day.at('08:20');
  await day.says('tomek', 'closed 501');
  expect(await day.milestone('501', 'handling')).toBe('13:20 running');
  for (const text of [pasted, (await day.says('tomek', 'when 501')).text, (await day.says('ines', 'why 501')).text]) expect(text).toContain(overridden);
  expect((await day.says('wren', 'who waits')).text).toMatch(/501 handling strength 13:20, .*overridden: bond \(Ines 08:00: “sheet gives three months more”\)/);
});

scenario('A20 an expired cartridge on a job without a procedure: HOLD with the paste', `${MONDAY}08:00`, async (day) => {
  const held = /^501 HELD: batch 55-B expired 02\/26\. Only Ines can let it go on/;
  expect((await day.says('tomek', 'paste 501 P1 batch 55-B exp 02/26')).text).toMatch(held);
  const decision = await theOnly(day, 'decision');
  expect([decision.at, decision.to]).toEqual(['08:00', 'ines']);
  expect(decision.text).toMatch(/501 batch 55-B expired 02\/26\. You decide\./);
  await day.at('08:20');
  await day.says('tomek', 'closed 501');
  expect(await day.milestone('501', 'handling')).toBe('13:20 held');
  expect((await day.says('tomek', 'release 501 looks fine')).text).toMatch(/Only the foreman may decide that \(Ines\)/);
  await day.says('ines', 'release 501 sheet gives three months more');
  expect(await day.milestone('501', 'handling')).toBe('13:20 running');
  for (const line of ['when 501', 'why 501']) expect((await day.says('tomek', line)).text).toMatch(/Batch 55-B expired 02\/26\.[^]*Decided: P1 goes on, Ines 08:20: “sheet gives three months more”/);
  expect(await posted(day)).toEqual(['08:00 decision ines']);
});

scenario('A20 metal 2.6 °C above the dew point: HOLD, and the foreman decides', `${MONDAY}08:00`, async (day) => {
  // Magnus: 12.4 °C at 18 °C and 70 %; metal of 15 °C is 2.6 above it, 3.0 are needed.
  expect((await day.says('tomek', 'air 18 rh 70')).text).toContain('Dew point 12.4 °C: metal at least 15.5 °C.');
  await day.says('tomek', 'paste 501 P1');
  const held = 'HOLD: metal 2.6 °C above the dew point of 12.4 °C, 3 °C needed. The foreman decides.';
  expect((await day.says('tomek', 'read 501 15')).text).toContain(held);
  const decision = await theOnly(day, 'decision');
  expect([decision.at, decision.to]).toEqual(['08:00', 'ines']);
  expect(decision.text).toMatch(/501 metal 2\.6 °C above the dew point of 12\.4 °C, 3 °C needed\. You decide\./);
  await day.at('08:20');
  expect((await day.says('tomek', 'closed 501')).text).toContain(held);
  expect(await day.milestone('501', 'handling')).toBe('15:50 held');
  expect((await day.says('tomek', 'when 501')).text).toMatch(/Handling strength 15:50 HELD, metal too close to the dew point/);
  expect((await day.says('tomek', 'release 501 looks dry')).text).toMatch(/Only the foreman may decide that \(Ines\)/);
  expect(await day.milestone('501', 'handling')).toBe('15:50 held');
  await day.says('ines', 'release 501 wiped and warmed');
  expect(await day.milestone('501', 'handling')).toBe('15:50 running');
  expect(await posted(day)).toEqual(['08:00 decision ines']);
});

scenario('A20 metal read damp before the paste: HOLD with the paste, in a procedure as well', `${MONDAY}08:00`, async (day) => {
  await day.says('ines', 'begin 501 bonded-panel');
  await day.says('tomek', 'batch 501 55-B');
  await day.says('tomek', 'expiry 501 02/27');
  await day.says('tomek', 'opened 501 28.02.2026');
  await day.says('tomek', 'air 18 rh 70');
  await day.says('tomek', 'read 501 j1 15');
  const pasted = await day.says('tomek', 'paste 501 P1');
  expect(pasted.text).toContain('HOLD: metal 2.6 °C above the dew point of 12.4 °C, 3 °C needed. The foreman decides.');
  expect(pasted.text).toMatch(/bond does not count: HOLD/);
  expect(await posted(day)).toEqual(['08:00 decision ines']);
  await day.at('08:20');
  await day.says('tomek', 'closed 501');
  expect(await day.milestone('501', 'handling')).toBe('15:50 held');
  expect((await day.says('tomek', 'when 501')).text).toMatch(/Handling strength 15:50 HELD, metal too close to the dew point/);
  expect(await posted(day)).toEqual(['08:00 decision ines']);
});

scenario('A21 hot work before confirmed full strength: a caution, and the foreman is told', `${MONDAY}09:00`, async (day) => {
  await day.says('tomek', 'cure 504 P1');
  await day.at('10:00');
  const answer = await day.says('tomek', 'weld 504');
  expect(answer.text).toMatch(/^504 hot work noted 10:00\.\nP1: full strength is not confirmed\. Ines is told\.\nOnly where the repair method says so\./);
  expect(await posted(day)).toEqual(['10:00 decision ines']);
  const told = await theOnly(day, 'decision');
  expect(told.text).toMatch(/^504 hot work at j1 since 10:00, P1 full strength not confirmed\. Noted 10:00 by Tomek/);
  expect(told.labels).toContain('Hold');
});

scenario('A21 welding wet where the plan has it: the caution, and that it is out of turn; on another joint the foreman hears of it', `${MONDAY}09:00`, async (day) => {
  await day.says('ines', 'begin 504 bonded-panel');
  await day.says('tomek', 'cure 504 j1 P1');
  await day.at('09:10');
  const wet = await day.says('tomek', 'weld 504 j2');
  // Nothing of the plan was done before it.
  expect(wet.text).toMatch(/^504 j2 hot work noted 09:10\.\nHOLD: weld-wet out of turn \(after set\)\. The foreman decides\.\nOnly where the repair method says so\./);
  expect(wet.text).not.toMatch(/not confirmed|told/);
  await day.at('09:40');
  expect(await posted(day)).toEqual([]);
  expect((await day.says('tomek', 'weld 504 j3')).text).toMatch(/P1: full strength is not confirmed\. Ines is told\./);
  expect(await posted(day)).toEqual(['09:40 decision ines']);
});
