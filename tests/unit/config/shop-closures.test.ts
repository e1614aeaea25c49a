import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkShop } from '../../../src/config/check-shop.js';
import { describeProblem } from '../../../src/config/file-problem.js';
import { readShop } from '../../../src/config/shop-file.js';
import { writtenFiles } from '../../support/written-files.js';

const GOOD = 'name: Corner Shop\nzone: Europe/London\nhours:\n  mon-fri: 08:00-17:00\n  sat-sun: closed\npeople:\n  olly: { name: Olly, role: foreman }\n';
const DAILY = GOOD.replace('mon-fri', 'mon-sun').replace('  sat-sun: closed\n', '');

const shopFrom = (text: string) => readShop(join(writtenFiles({ 'shop.yaml': text }), 'shop.yaml'));

function problems(text: string): string[] {
  const read = shopFrom(text);
  return read.ok ? [] : read.problems.map((problem) => describeProblem({ ...problem, file: 'shop.yaml' }));
}

const december = (from: number, to: number): string => Array.from({ length: to - from + 1 }, (_, index) => `2026-12-${String(from + index).padStart(2, '0')}`).join(', ');

describe('closed days, holidays and pads in shop.yaml', () => {
  it('are none where nothing is written', () => {
    const none = { ok: true, shop: { closedDays: null, holidays: [], pads: [] } };
    expect(shopFrom(GOOD)).toMatchObject(none);
    expect(shopFrom(`${GOOD}closed-days: unknown\nholidays:\npads:\n`)).toMatchObject(none);
  });

  it('are read in the unit of the shop, in the order of the calendar, by number or name', () => {
    const text = `${GOOD}air: 20\nnight: 12\nclosed-days: 8\nholidays: [2027-01-01, "2026-12-25"]\nlamps: [A]\npads: [1, m2, "3"]\n`;
    expect(shopFrom(text)).toMatchObject({ ok: true, shop: { closedDays: 8, holidays: ['2026-12-25', '2027-01-01'], pads: ['1', 'M2', '3'] } });
    expect(shopFrom(`${GOOD}unit: F\nair: 68\nnight: 50\nclosed-days: 41\n`)).toMatchObject({ ok: true, shop: { closedDays: 5 } });
    expect(shopFrom(`${GOOD}air: 20\nnight: 12\nclosed-days: 12\n`)).toMatchObject({ ok: true, shop: { closedDays: 12 } });
    expect(shopFrom(`${GOOD}closed-days: 8\n`)).toMatchObject({ ok: true, shop: { closedDays: 8, night: null } });
  });

  it('dates of a file that is written as YAML 1.1 are dates as well', () => {
    expect(shopFrom(`%YAML 1.1\n---\n${GOOD}holidays: [2026-12-25]\n`)).toMatchObject({ ok: true, shop: { holidays: ['2026-12-25'] } });
  });

  it('may keep the shop closed for 20 days in a row, and a shop that never opens for ever', () => {
    // Sat 12 December to Thu 31 December are 20 days.
    expect(shopFrom(`${GOOD}holidays: [${december(14, 31)}]\n`)).toMatchObject({ ok: true });
    expect(shopFrom(`${GOOD.replace('08:00-17:00', 'closed')}holidays: [2026-12-25]\n`)).toMatchObject({ ok: true, shop: { holidays: ['2026-12-25'] } });
  });

  it.each([
    ['a holiday twice', 'holidays:\n  - 2026-12-25\n  - 2027-01-01\n  - 2026-12-25\n', 'line 11, holidays no. 3: 2026-12-25 stands in the list already'],
    ['a day that no calendar has', 'holidays: [2026-02-29]\n', 'line 8, holidays no. 1: 2026-02-29 is not in the calendar'],
    ['a month that no calendar has', 'holidays: [2026-12-25, 2026-13-01]\n', 'line 8, holidays no. 2: 2026-13-01 is not in the calendar'],
    ['a date the other way round', 'holidays: [25.12.2026]\n', 'line 8, holidays no. 1: must be a date such as 2026-12-25: year, month, day'],
    ['a date in words', 'holidays: [Christmas]\n', 'line 8, holidays no. 1: must be a date such as 2026-12-25'],
    ['a date without hyphens', 'holidays: [20261225]\n', 'line 8, holidays no. 1: must be a date such as 2026-12-25'],
    ['a year that is mistyped', 'holidays: [2206-12-25]\n', 'line 8, holidays no. 1: 2206-12-25 must lie in the years 2000 to 2199'],
    ['a holiday that is no list', 'holidays: 2026-12-25\n', 'line 8, holidays: must be a list of dates such as [2026-12-25, 2027-01-01]'],
    ['a mistyped key', 'holydays: [2026-12-25]\n', 'line 8, holydays: is not known here; did you mean holidays?'],
    ['21 closed days in a row', `holidays:\n  - 2026-11-02\n  - 2027-01-01\n${december(14, 31).split(', ').map((date) => `  - ${date}\n`).join('')}`, 'line 11, holidays no. 3: would keep the shop closed for 23 days from 2026-12-12; at most 20 days in a row'],
    ['closed days warmer than night', 'air: 20\nnight: 12\nclosed-days: 13\n', 'line 10, closed-days: must not be warmer than night or air'],
    ['closed days warmer than air, with the night unknown', 'air: 20\nclosed-days: 21\n', 'line 9, closed-days: must not be warmer than night or air'],
    ['closed days in words', 'closed-days: cold\n', 'line 8, closed-days: must be a temperature such as 20 or 68 F, or unknown'],
    ['closed days in the other unit', 'closed-days: 60\n', 'line 8, closed-days: 60 °C is not the air of a shop'],
    ['a pad with the name of a lamp', 'lamps: [A, B]\npads:\n  - 1\n  - b\n', 'line 11, pads no. 2: B is the name of a lamp already'],
    ['a pad twice', 'pads: [1, 2, "1"]\n', 'line 8, pads no. 3: 1 stands in the list already'],
    ['a pad that would be read as a temperature', 'pads: [35]\n', 'line 8, pads no. 1: must be a number from 1 to 9, or a letter and at most five letters or digits'],
    ['a pad that is no name', 'pads: [{ name: M1 }]\n', 'line 8, pads no. 1: must be a number from 1 to 9 or a short name such as M1'],
    ['pads that are no list', 'pads: 2\n', 'line 8, pads: must be a list of pad names such as [1, 2]'],
  ])('are refused for %s', (_name, more, expected) => {
    expect(problems(`${GOOD}${more}`).join('\n')).toContain(expected);
  });

  it('21 days in a row are too many in a shop that opens every day, too', () => {
    expect(shopFrom(`${DAILY}holidays: [${december(5, 24)}]\n`)).toMatchObject({ ok: true });
    expect(problems(`${DAILY}holidays: [${december(5, 25)}]\n`)).toEqual([expect.stringContaining('line 7, holidays no. 1: would keep the shop closed for 21 days from 2026-12-05')]);
  });
});

describe('check-shop', () => {
  const CARDS = { path: 'src/cards/', example: true };
  const PROCEDURES = { path: 'src/procedures/', example: true };
  const said = (more: string): string | undefined => {
    const path = join(writtenFiles({ 'shop.yaml': `${GOOD}${more}` }), 'shop.yaml');
    return checkShop({ shop: { path, example: false }, cards: CARDS, procedures: PROCEDURES }).lines[0];
  };

  it('says what was understood', () => {
    expect(said('air: 20\nnight: 12\nclosed-days: 8\nholidays: [2026-12-25]\nlamps: [A]\npads: [1, 2]\n')).toBe(
      'Corner Shop: Europe/London, 1 people, lamps A, pads 1, 2, air 20 °C, night 12 °C, closed days 8 °C, holidays 2026-12-25, unit C, language en, bays none, fire watch 60 min, battery caution above 60 °C, shifts none.',
    );
    expect(said('')).toBe('Corner Shop: Europe/London, 1 people, lamps none, pads none, air unknown, night unknown, closed days as night, holidays none, unit C, language en, bays none, fire watch 60 min, battery caution above 60 °C, shifts none.');
  });

  it('names file, line and field of what is wrong', () => {
    expect(said('holidays: [2026-02-30]\n')).toMatch(/shop\.yaml line 8, holidays no\. 1: 2026-02-30 is not in the calendar$/);
  });
});
