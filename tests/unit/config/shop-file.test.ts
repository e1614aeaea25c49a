import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readConfig } from '../../../src/config.js';
import { describeProblem } from '../../../src/config/file-problem.js';
import { readShop } from '../../../src/config/shop-file.js';
import { DEFAULT_RHYTHM } from '../../../src/config/shop-rhythm.js';
import { writtenFiles } from '../../support/written-files.js';

const GOOD = 'name: Corner Shop\nzone: Europe/London\nhours:\n  mon-sun: 08:00-17:00\npeople:\n  olly: { name: Olly, role: foreman }\n';

const shopFrom = (text: string) => readShop(join(writtenFiles({ 'shop.yaml': text }), 'shop.yaml'));

function problems(text: string): string[] {
  const read = shopFrom(text);
  return read.ok ? [] : read.problems.map((problem) => describeProblem({ ...problem, file: 'shop.yaml' }));
}

describe('shop.yaml', () => {
  it('comes with the program as an example', () => {
    const config = readConfig({});
    const open = { opens: 7 * 60 + 30, closes: 17 * 60 };
    expect(config.ok && readShop(config.config.shop.path)).toEqual({
      ok: true,
      shop: {
        name: 'Brackenholt Body & Frame',
        zone: 'Europe/London',
        hours: { 1: open, 2: open, 3: open, 4: open, 5: open, 6: null, 7: null },
        holidays: ['2026-12-25', '2027-01-01'],
        air: 20,
        night: 12,
        closedDays: null,
        unit: 'C',
        language: 'en',
        people: [
          { id: 'ines', name: 'Ines', role: 'foreman', chatId: null, language: 'en', unit: null },
          { id: 'tomek', name: 'Tomek', role: 'technician', chatId: null, language: 'en', unit: null },
          { id: 'wren', name: 'Wren', role: 'apprentice', chatId: null, language: 'en', unit: null },
        ],
        lamps: ['A', 'B'],
        pads: ['M1', 'M2'],
        rhythm: DEFAULT_RHYTHM,
        shifts: [],
        bays: ['1', '2'],
        fireWatch: 60,
        batteryCaution: 60,
      },
    });
  });

  it('assumes nothing that is not written: no air, no night, no lamps, °C, the usual rhythm', () => {
    expect(shopFrom(GOOD)).toMatchObject({ ok: true, shop: { air: null, night: null, unit: 'C', lamps: [], rhythm: DEFAULT_RHYTHM } });
    expect(shopFrom(`${GOOD}air: unknown\nnight:\n`)).toMatchObject({ ok: true, shop: { air: null, night: null } });
  });

  it('gives everybody the language of the shop who has none of their own', () => {
    const text = GOOD.replace('role: foreman }', 'role: foreman }\n  petra: { name: Petra, role: technician, language: es }');
    expect(shopFrom(`${text}language: de\n`)).toMatchObject({ ok: true, shop: { language: 'de', people: [{ id: 'olly', language: 'de' }, { id: 'petra', language: 'es' }] } });
    expect(shopFrom(text)).toMatchObject({ ok: true, shop: { language: 'en', people: [{ id: 'olly', language: 'en' }, { id: 'petra', language: 'es' }] } });
    expect(problems(`${GOOD}language: fr\n`)).toEqual(['shop.yaml line 7, language: must be one of en, de, es']);
    expect(problems(`${GOOD}langage: de\n`)).toEqual(['shop.yaml line 7, langage: is not known here; did you mean language?']);
  });

  it('reads temperatures in the unit of the shop unless a unit is written', () => {
    expect(shopFrom(`${GOOD}unit: F\nair: 68\nnight: 10 C\n`)).toMatchObject({ ok: true, shop: { unit: 'F', air: 20, night: 10 } });
    expect(shopFrom(`${GOOD}air: 68 °F\nnight: "12,5"\n`)).toMatchObject({ ok: true, shop: { unit: 'C', air: 20, night: 12.5 } });
  });

  it('reads single days, days from to, and hours to the end of the day', () => {
    const hours = 'hours:\n  Mon: closed\n  tue-fri: 7:30 - 17:00\n  sat: 00:00-24:00\n  sun: Closed\n';
    expect(shopFrom(GOOD.replace(/hours:\n.*\n/, hours))).toMatchObject({ ok: true, shop: { hours: { 1: null, 2: { opens: 450, closes: 1020 }, 5: { opens: 450, closes: 1020 }, 6: { opens: 0, closes: 1440 }, 7: null } } });
  });

  it('takes own waits and keeps the other defaults', () => {
    expect(shopFrom(`${GOOD}rhythm: { repeats: [5, 15, 25], foreman: 30, still-on: 45 }\n`)).toMatchObject({ ok: true, shop: { rhythm: { ...DEFAULT_RHYTHM, repeats: [5, 15, 25], foreman: 30, stillOn: 45 } } });
  });

  it('keeps ids and lamps in the letters the house uses', () => {
    const text = GOOD.replace('olly: {', 'Olly: { chat: U02ABC,');
    expect(shopFrom(`${text}lamps: [a, l2]\n`)).toMatchObject({ ok: true, shop: { people: [{ id: 'olly', chatId: 'U02ABC' }], lamps: ['A', 'L2'] } });
  });

  it('tells everything that is wrong at once, by line', () => {
    expect(problems('name: 3\nzone: Europe/Londn\nhuors:\n  mon: closed\nlamps: [A, 1]\n').map((line) => line.split(':')[0])).toEqual([
      'shop.yaml line 1, name',
      'shop.yaml line 1, hours',
      'shop.yaml line 1, people',
      'shop.yaml line 2, zone',
      'shop.yaml line 3, huors',
      'shop.yaml line 5, lamps no. 2',
    ]);
  });

  it('that is not there is named by its path', () => {
    expect(readShop('/nowhere/shop.yaml')).toEqual({ ok: false, problems: [{ file: '/nowhere/shop.yaml', line: null, field: null, problem: 'cannot be read (there is no such file or folder)' }] });
  });
});

const hours = (text: string): string => GOOD.replace('mon-sun: 08:00-17:00', text);
const person = (text: string): string => `${GOOD}${text}`;

describe('shop.yaml is refused', () => {
  it.each([
    ['an unknown key, naming the nearest', `${GOOD}lmaps: [A]\n`, 'line 7, lmaps: is not known here; did you mean lamps?'],
    ['an unknown wait, naming the nearest', `${GOOD}rhythm:\n  stil-on: 3\n`, 'line 8, rhythm.stil-on: is not known here; did you mean still-on?'],
    ['an unknown field of a person', GOOD.replace('role:', 'rolle:'), 'line 6, people.olly.rolle: is not known here; did you mean role?'],
    ['a zone that is none', GOOD.replace('London', 'Londn'), 'line 2, zone: Europe/Londn is not a time zone of the IANA list; did you mean Europe/London?'],
    ['a day that is missing', hours('mon-sat: closed'), 'line 3, hours: says nothing about sun'],
    ['a day that is given twice', hours('mon-sun: closed\n  fri: 08:00-12:00'), 'line 5, hours.fri: fri is given under mon-sun already'],
    ['a day that is none', hours('mon-sun: closed\n  sta: closed'), 'line 5, hours.sta: is not a day; did you mean sat?'],
    ['days that run backwards', hours('mon-sun: closed\n  sat-mon: closed'), 'line 5, hours.sat-mon: runs backwards'],
    ['three days in a row', hours('mon-tue-wed: closed'), 'line 4, hours.mon-tue-wed: must be one day or two days'],
    ['hours without an end', hours('mon-sun: 08:00'), 'line 4, hours.mon-sun: must be hours such as 07:30-17:00, or closed'],
    ['an hour that is none', hours('mon-sun: 08:00-24:30'), 'line 4, hours.mon-sun: 08:00-24:30 is no time of day'],
    ['a minute that is none', hours('mon-sun: 08:75-17:00'), 'line 4, hours.mon-sun: 08:75-17:00 is no time of day'],
    ['hours past midnight', hours('mon-sun: 22:00-06:00'), 'line 4, hours.mon-sun: must open before it closes'],
    ['air in the other unit', `${GOOD}air: 68\n`, 'line 7, air: 68 °C is not the air of a shop; a unit can be written: 68 F'],
    ['air in words', `${GOOD}air: warm\n`, 'line 7, air: must be a temperature such as 20 or 68 F, or unknown'],
    ['a night warmer than the day', `${GOOD}air: 12\nnight: 20\n`, 'line 8, night: must not be warmer than air'],
    ['a unit that is none', `${GOOD}unit: K\n`, 'line 7, unit: must be C or F'],
    ['a role that is none', GOOD.replace('foreman', 'boss'), 'line 6, people.olly.role: must be one of apprentice, technician, foreman'],
    ['nobody who can release a hold', GOOD.replace('foreman', 'owner'), 'line 5, people: has no foreman'],
    ['an id twice in other capitals', person('  Olly: { name: Petra, role: technician }\n'), 'line 7, people.Olly: differs from another id only in capitals'],
    ['a name twice', person('  petra: { name: olly, role: technician }\n'), 'line 7, people.petra.name: olly is the name of somebody else'],
    ['a chat name instead of an id', GOOD.replace('role: foreman', 'role: foreman, chat: "@olly"'), 'line 6, people.olly.chat: must be the member id'],
    ['a member id twice', person('  petra: { name: Petra, role: technician, chat: U1 }\n').replace('role: foreman', 'role: foreman, chat: U1'), 'line 7, people.petra.chat: is the member id of somebody else'],
    ['a person as a bare name', person('  petra: Petra\n'), 'line 7, people.petra: must be keys with values'],
    ['an id with a space', person('  petra k: { name: Petra, role: technician }\n'), 'line 7, people.petra k: must be an id'],
    ['a lamp that is a number', `${GOOD}lamps: [1]\n`, 'line 7, lamps no. 1: must be a short name such as A or L1'],
    ['a lamp with a long name', `${GOOD}lamps: [bigredone]\n`, 'line 7, lamps no. 1: must be a letter, then at most five'],
    ['a lamp twice', `${GOOD}lamps:\n  - A\n  - a\n`, 'line 9, lamps no. 2: A stands in the list already'],
    ['repeats that do not rise', `${GOOD}rhythm: { repeats: [30, 10] }\n`, 'line 7, rhythm.repeats: must rise'],
    ['a foreman asked before the owner', `${GOOD}rhythm:\n  foreman: 20\n`, 'line 8, rhythm.foreman: must be later than the last repeat (30)'],
    ['a wait of nothing', `${GOOD}rhythm: { put-off: 0 }\n`, 'line 7, rhythm.put-off: must be minutes, more than 0'],
    ['an empty file', '', 'line 1: must be keys with values'],
    ['a doubled key', `${GOOD}name: Other\n`, 'line 7: has a key that stands here already'],
  ])('for %s', (_, text, expected) => {
    expect(problems(text).join('\n')).toContain(expected);
  });
});
