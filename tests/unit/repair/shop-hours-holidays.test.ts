import { describe, expect, it } from 'vitest';
import { instant, type Instant } from '../../../src/cure/units.js';
import type { Hours } from '../../../src/repair/shop-days.js';
import { dayEnd, isOpen, lastBell, lastClosing, MOST_CLOSED_DAYS, nextBell, nextClosing, nextLongClosing, nextOpening, openPeriods, type BellTime } from '../../../src/repair/shop-hours.js';
import { weekdays } from '../../support/example-shop.js';

const utc = (iso: string): Instant => instant(Date.parse(`${iso}:00Z`));
const shown = (at: Instant | null): string => (at === null ? 'never' : new Date(at).toISOString().slice(0, 16));
const rung = (bell: BellTime | null): string => (bell === null ? 'none' : `${bell.bell} ${shown(bell.at)}`);
const closedOn = (...holidays: string[]): Hours => ({ zone: 'Europe/London', hours: weekdays('07:30', '17:00'), holidays });

/** `04-02*` for a working day of 2026 that a whole closed day or more follows. */
const workingDays = (shop: Hours, from: string, to: string): string[] =>
  openPeriods(shop, utc(from), utc(to)).map(({ opens, longClosureAfter }) => `${shown(opens).slice(5, 10)}${longClosureAfter ? '*' : ''}`);

describe('a holiday is a closed day', () => {
  it.each<[string, Hours, string, string, readonly string[]]>([
    ['a weekend', closedOn(), '2026-03-05T12:00', '2026-03-10T12:00', ['03-05', '03-06*', '03-09', '03-10']],
    ['a holiday in the week', closedOn('2026-03-11'), '2026-03-09T12:00', '2026-03-12T12:00', ['03-09', '03-10*', '03-12']],
    ['a holiday on a Friday, with the weekend', closedOn('2026-04-03'), '2026-04-01T12:00', '2026-04-07T12:00', ['04-01', '04-02*', '04-06', '04-07']],
    ['a holiday on a Monday, with the weekend', closedOn('2026-05-04'), '2026-04-30T12:00', '2026-05-06T12:00', ['04-30', '05-01*', '05-05', '05-06']],
    ['a holiday on a closed day changes nothing', closedOn('2026-03-07'), '2026-03-05T12:00', '2026-03-10T12:00', ['03-05', '03-06*', '03-09', '03-10']],
    ['two holidays in a row', closedOn('2026-03-10', '2026-03-11'), '2026-03-09T12:00', '2026-03-13T12:00', ['03-09*', '03-12', '03-13*']],
    ['a working day between two holidays', closedOn('2026-03-10', '2026-03-12'), '2026-03-09T12:00', '2026-03-13T12:00', ['03-09*', '03-11*', '03-13*']],
    ['Christmas week', closedOn('2026-12-25', '2026-12-28', '2026-12-29', '2026-12-30', '2026-12-31', '2027-01-01'), '2026-12-23T12:00', '2027-01-05T12:00', ['12-23', '12-24*', '01-04', '01-05']],
    ['a holiday at the weekend of the clock change in spring', closedOn('2026-03-30'), '2026-03-27T12:00', '2026-03-31T12:00', ['03-27*', '03-31']],
    ['a holiday at the weekend of the clock change in autumn', closedOn('2026-10-23', '2026-10-26'), '2026-10-22T12:00', '2026-10-27T12:00', ['10-22*', '10-27']],
  ])('%s', (_name, shop, from, to, expected) => {
    expect(workingDays(shop, from, to)).toEqual(expected);
  });

  // London: UTC+1 from 29 March to 25 October 2026.
  it.each([
    ['2026-04-03T12:00', '2026-04-06T06:30', '2026-04-06T16:00', 'closing 2026-04-02T16:00', 'opening 2026-04-06T06:30'],
    ['2026-04-02T16:00', '2026-04-06T06:30', '2026-04-06T16:00', 'closing 2026-04-02T16:00', 'opening 2026-04-06T06:30'],
    ['2026-03-30T12:00', '2026-03-31T06:30', '2026-03-31T16:00', 'closing 2026-03-27T17:00', 'opening 2026-03-31T06:30'],
    ['2026-10-26T12:00', '2026-10-27T07:30', '2026-10-27T17:00', 'closing 2026-10-23T16:00', 'opening 2026-10-27T07:30'],
    ['2026-12-31T12:00', '2027-01-04T07:30', '2027-01-04T17:00', 'closing 2026-12-24T17:00', 'opening 2027-01-04T07:30'],
  ])('no bell rings on it and nobody is there at %s', (at, opens, closes, last, next) => {
    const shop = closedOn('2026-03-30', '2026-04-03', '2026-10-26', '2026-12-25', '2026-12-28', '2026-12-29', '2026-12-30', '2026-12-31', '2027-01-01');
    const moment = utc(at);
    expect([shown(nextOpening(shop, moment)), shown(nextClosing(shop, moment))]).toEqual([opens, closes]);
    expect([rung(lastBell(shop, moment)), rung(nextBell(shop, moment))]).toEqual([last, next]);
    expect(isOpen(shop, moment)).toBe(false);
  });

  it('is a day of the zone of the shop', () => {
    const auckland: Hours = { ...closedOn('2026-02-06'), zone: 'Pacific/Auckland' };
    // 6 February in Auckland, UTC+13, lasts from 5 February 11:00 to 6 February 11:00 UTC.
    expect([isOpen(auckland, utc('2026-02-05T22:00')), isOpen(closedOn('2026-02-06'), utc('2026-02-05T12:00'))]).toEqual([false, true]);
    expect(shown(dayEnd(auckland, utc('2026-02-05T22:00')))).toBe('2026-02-06T11:00');
  });

  it('counts anew when the list of holidays is another', () => {
    const hours = weekdays('07:30', '17:00');
    const at = utc('2026-03-11T12:00');
    expect([[], ['2026-03-11'], []].map((holidays) => isOpen({ zone: 'Europe/London', hours, holidays }, at))).toEqual([true, false, true]);
  });

  it('closes the shop for three weeks at most without anything being lost', () => {
    const holidays = Array.from({ length: 14 }, (_, index) => `2026-12-${index + 14}`);
    const shop = closedOn(...holidays);
    // 12 December to 27 December, and with five more holidays to the most there can be.
    expect(shown(nextOpening(shop, utc('2026-12-11T17:00')))).toBe('2026-12-28T07:30');
    const longest = closedOn(...holidays, '2026-12-28', '2026-12-29', '2026-12-30', '2026-12-31');
    expect([shown(nextOpening(longest, utc('2026-12-11T07:31'))), rung(lastBell(longest, utc('2027-01-01T07:29')))]).toEqual(['2027-01-01T07:30', 'closing 2026-12-11T17:00']);
    expect(MOST_CLOSED_DAYS).toBe(20);
  });
});

describe('the closings before and after a closure', () => {
  const shop = closedOn('2026-03-11');
  it.each([
    ['2026-03-09T12:00', '2026-03-06T17:00', '2026-03-10T17:00'],
    ['2026-03-10T17:00', '2026-03-10T17:00', '2026-03-13T17:00'],
    ['2026-03-11T12:00', '2026-03-10T17:00', '2026-03-13T17:00'],
    ['2026-03-15T12:00', '2026-03-13T17:00', '2026-03-20T17:00'],
  ])('at %s the last was %s, the next before a long closure is %s', (at, last, next) => {
    expect([shown(lastClosing(shop, utc(at))), shown(nextLongClosing(shop, utc(at)))]).toEqual([last, next]);
  });

  it('there is no long one in a shop that opens every day', () => {
    const day = { opens: 450, closes: 1020 };
    const daily: Hours = { zone: 'Europe/London', hours: { 1: day, 2: day, 3: day, 4: day, 5: day, 6: day, 7: day }, holidays: [] };
    expect(nextLongClosing(daily, utc('2026-03-09T12:00'))).toBeNull();
    expect(shown(nextLongClosing({ ...daily, holidays: ['2026-03-20'] }, utc('2026-03-09T12:00')))).toBe('2026-03-19T17:00');
  });
});
