import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkShop } from '../../../src/config/check-shop.js';
import { describeProblem } from '../../../src/config/file-problem.js';
import { readShop } from '../../../src/config/shop-file.js';
import { writtenFiles } from '../../support/written-files.js';

const GOOD = 'name: Corner Shop\nzone: Europe/London\nhours:\n  mon-sun: 08:00-17:00\npeople:\n  olly: { name: Olly, role: foreman }\n  petra: { name: Petra, role: technician }\n';

const pathOf = (text: string): string => join(writtenFiles({ 'shop.yaml': text }), 'shop.yaml');
const shiftsOf = (...shifts: string[]): string => `${GOOD}shifts:\n${shifts.map((shift) => `  - ${shift}\n`).join('')}`;

function problems(text: string): string[] {
  const read = readShop(pathOf(text));
  return read.ok ? [] : read.problems.map((problem) => describeProblem({ ...problem, file: 'shop.yaml' }));
}

describe('shop.yaml', () => {
  it('reads shifts, also past midnight, and on days in several pieces', () => {
    const text = shiftsOf('{ name: early, days: mon-fri, hours: 06:00-14:00, people: [Olly] }', '{ name: night, days: [mon-thu, sat], hours: 22:00-06:00 next day, people: [olly, petra] }', '{ name: all day, days: sun, hours: 00:00-24:00, people: [petra] }');
    expect(readShop(pathOf(text))).toMatchObject({
      ok: true,
      shop: {
        shifts: [
          { name: 'early', days: [1, 2, 3, 4, 5], begins: 360, ends: 840, people: ['olly'] },
          { name: 'night', days: [1, 2, 3, 4, 6], begins: 1320, ends: 1800, people: ['olly', 'petra'] },
          { name: 'all day', days: [7], begins: 0, ends: 1440, people: ['petra'] },
        ],
      },
    });
  });

  it('reads what a person reads, bays, the fire watch and the battery caution', () => {
    const text = `${GOOD.replace('role: technician', 'role: technician, language: de, unit: F')}bays: [1, paint]\nfire-watch: 90\nbattery-caution: 140 F\n`;
    expect(readShop(pathOf(text))).toMatchObject({ ok: true, shop: { people: [{ language: 'en', unit: null }, { language: 'de', unit: 'F' }], bays: ['1', 'paint'], fireWatch: 90, batteryCaution: 60 } });
  });

  it('has no shifts and no bays, an hour of fire watch and a caution above 60 °C where nothing is written', () => {
    expect(readShop(pathOf(GOOD))).toMatchObject({ ok: true, shop: { shifts: [], bays: [], fireWatch: 60, batteryCaution: 60 } });
  });

  it('says who works when, and who never does', () => {
    const { lines } = checkShop({ shop: { path: pathOf(shiftsOf('{ name: night, days: fri-sat, hours: 22:00-06:30 next day, people: [olly] }')), example: false }, cards: { path: 'src/cards/', example: true }, procedures: { path: 'src/procedures/', example: true } });
    expect(lines.slice(1, 3)).toEqual(['  Shift night: fri, sat 22:00-06:30 next day, olly.', '  Petra is in no shift: what is theirs goes to the foreman on duty.']);
  });
});

describe('shop.yaml is refused', () => {
  it.each([
    ['somebody unknown in a shift', shiftsOf('{ name: early, days: mon, hours: 06:00-14:00, people: [olly, perta] }'), 'line 9, shifts no. 1.people no. 2: perta is not one of people; did you mean petra?'],
    ['somebody twice in a shift', shiftsOf('{ name: early, days: mon, hours: 06:00-14:00, people: [olly, Olly] }'), 'line 9, shifts no. 1.people no. 2: olly stands in this shift already'],
    ['a shift of no length', shiftsOf('{ name: early, days: mon, hours: 06:00-06:00, people: [olly] }'), 'line 9, shifts no. 1.hours: begins when it ends: a shift of no length. A whole day is 00:00-24:00'],
    ['a shift that ends before it begins', shiftsOf('{ name: night, days: mon, hours: 22:00-06:00, people: [olly] }'), 'line 9, shifts no. 1.hours: ends before it begins. Past midnight? Write 22:00-06:00 next day'],
    ['a shift of more than a day', shiftsOf('{ name: early, days: mon, hours: 06:00-14:00 next day, people: [olly] }'), 'line 9, shifts no. 1.hours: 06:00-14:00 next day would last a day or longer: leave out next day'],
    ['two shifts of one name', shiftsOf('{ name: early, days: mon, hours: 06:00-14:00, people: [olly] }', '{ name: Early, days: tue, hours: 06:00-14:00, people: [olly] }'), 'line 10, shifts no. 2.name: Early is the name of another shift already'],
    ['a day that is none', shiftsOf('{ name: early, days: mnday, hours: 06:00-14:00, people: [olly] }'), 'line 9, shifts no. 1.days: mnday is not a day; days are mon, tue, wed, thu, fri, sat, sun'],
    ['days that run backwards', shiftsOf('{ name: early, days: fri-mon, hours: 06:00-14:00, people: [olly] }'), 'line 9, shifts no. 1.days: fri-mon runs backwards: write mon-fri, or the days one by one'],
    ['a day twice', shiftsOf('{ name: early, days: [mon-fri, tue], hours: 06:00-14:00, people: [olly] }'), 'line 9, shifts no. 1.days: tue names a day that stands there already'],
    ['hours that are none', shiftsOf('{ name: early, days: mon, hours: 6 to 14, people: [olly] }'), 'line 9, shifts no. 1.hours: must be hours such as 06:00-14:00; past midnight 22:00-06:00 next day'],
    ['a time that is none', shiftsOf('{ name: early, days: mon, hours: 24:00-06:00, people: [olly] }'), 'line 9, shifts no. 1.hours: 24:00-06:00 is no time of day: write 00:00 to 24:00'],
    ['a shift of nobody', shiftsOf('{ name: early, days: mon, hours: 06:00-14:00, people: [] }'), 'line 9, shifts no. 1.people: must name somebody'],
    ['an unknown key', shiftsOf('{ name: early, day: mon, hours: 06:00-14:00, people: [olly] }'), 'line 9, shifts no. 1.day: is not known here; did you mean days?'],
    ['a language nobody here speaks', GOOD.replace('role: technician', 'role: technician, language: fr'), 'line 7, people.petra.language: must be one of en, de, es'],
    ['a bay twice', `${GOOD}bays: [1, Paint, paint]\n`, 'line 8, bays no. 3: paint stands in the list already'],
    ['a caution in the wrong unit', `${GOOD}battery-caution: 140\n`, 'line 8, battery-caution: 140 °C must lie from 30 to 100 °C; a unit can be written: 140 F, 60 C'],
    ['no fire watch at all', `${GOOD}fire-watch: 0\n`, 'line 8, fire-watch: must be minutes, more than 0 and at most 1440'],
  ])('for %s', (_, text, problem) => {
    expect(problems(text)).toContain(`shop.yaml ${problem}`);
  });
});
