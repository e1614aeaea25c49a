import { expect } from 'vitest';
import { posted, scenario, theOnly } from '../support/told-day.js';

// A22 against the built program, by either way in; the card is an example with invented figures.

const MONDAY = '2026-03-02T';

/** Air, humidity, and when the table lets the car go that was set at 10:00: no row is taken between two, the worse one counts. */
const GLASS = [
  { air: 14, rh: 60, due: '14:00' },
  { air: 21, rh: 38, due: '14:00' },
  { air: 21, rh: 50, due: '11:30' },
];

for (const { air, rh, due } of GLASS) {
  scenario(`A22 glass set at ${air} °C and ${rh} %: standing until ${due}`, `${MONDAY}10:00`, async (day) => {
    await day.says('tomek', `air ${air} rh ${rh}`);
    expect((await day.says('tomek', 'cure 7219 G1')).text).toMatch(new RegExp(`^7219 G1 closed 10:00, air ${air} °C\\.\\nStanding time (?:earliest )?${due}`));
    expect(await day.milestone('7219', 'drive-away')).toBe(`${due} running`);
  });
}

scenario('A22 glass set at 3 °C: no time, none invented, and the foreman is told once', `${MONDAY}10:00`, async (day) => {
  await day.says('tomek', 'air 3 rh 60');
  const answer = await day.says('tomek', 'cure 7219 G1');
  expect(answer.text).toMatch(/Standing time no sheet time in this air: too cold/);
  expect(answer.text).not.toMatch(/1[1-9]:\d\d/);
  expect(await day.milestone('7219', 'drive-away')).toBe('- asleep');
  await day.at('10:01');
  const told = await theOnly(day, 'decision');
  expect([told.at, told.to, told.labels]).toEqual(['10:00', 'ines', ['Scrap']]);
  expect(told.text).toMatch(/^7219 standing time: no time, air 3 °C, the sheet begins at 5 °C\.\nWarm the bay to 5 °C or more\./);
  await day.says('tomek', 'air 3.5 rh 60');
  await day.at('16:59');
  expect(await posted(day)).toEqual(['10:00 decision ines']);
});
