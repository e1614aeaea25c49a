import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { instant, type Instant } from '../../../src/cure/units.js';
import { dayEnd, isOpen, lastBell, nextBell, nextClosing, nextOpening, openPeriods } from '../../../src/repair/shop-hours.js';
import type { Hours } from '../../../src/repair/shop-days.js';
import { weekdays } from '../../support/example-shop.js';

const EVERY_DAY = { opens: 450, closes: 1020 };
const daily = (zone: string): Hours => ({ zone, holidays: [], hours: { 1: EVERY_DAY, 2: EVERY_DAY, 3: EVERY_DAY, 4: EVERY_DAY, 5: EVERY_DAY, 6: EVERY_DAY, 7: EVERY_DAY } });
const LONDON: Hours = { zone: 'Europe/London', holidays: [], hours: weekdays('07:30', '17:00') };

const utc = (iso: string): Instant => instant(Date.parse(`${iso}:00Z`));
const shown = (at: Instant | null): string => (at === null ? 'never' : new Date(at).toISOString().slice(0, 16));

describe('opening and closing stay at the same time by the wall clock', () => {
  // Clock changes of 2026 as the IANA time zone database has them.
  it.each([
    ['Europe/London', '2026-03-28', '2026-03-28T07:30', '2026-03-28T17:00'],
    ['Europe/London', '2026-03-29', '2026-03-29T06:30', '2026-03-29T16:00'],
    ['Europe/London', '2026-10-25', '2026-10-25T07:30', '2026-10-25T17:00'],
    ['Europe/Berlin', '2026-03-28', '2026-03-28T06:30', '2026-03-28T16:00'],
    ['Europe/Berlin', '2026-03-29', '2026-03-29T05:30', '2026-03-29T15:00'],
    ['Europe/Berlin', '2026-10-25', '2026-10-25T06:30', '2026-10-25T16:00'],
    ['America/New_York', '2026-03-07', '2026-03-07T12:30', '2026-03-07T22:00'],
    ['America/New_York', '2026-03-08', '2026-03-08T11:30', '2026-03-08T21:00'],
    ['America/New_York', '2026-11-01', '2026-11-01T12:30', '2026-11-01T22:00'],
  ])('%s on %s', (zone, day, opens, closes) => {
    const shop = daily(zone);
    const midnight = instant(DateTime.fromISO(day, { zone }).toMillis());
    expect([shown(nextOpening(shop, midnight)), shown(nextClosing(shop, midnight))]).toEqual([opens, closes]);
    expect(openPeriods(shop, midnight, midnight)).toEqual([{ opens: utc(opens), closes: utc(closes), longClosureAfter: false }]);
  });

  it.each([
    ['Europe/London', '2026-03-29T00:30', '2026-03-29T23:00'],
    ['Europe/Berlin', '2026-10-25T00:30', '2026-10-25T23:00'],
    ['America/New_York', '2026-11-01T12:00', '2026-11-02T05:00'],
  ])('and a day of 23 or 25 hours ends at midnight: %s', (zone, at, expected) => {
    expect(shown(dayEnd(daily(zone), utc(at)))).toBe(expected);
  });

  // In Santiago the clocks go forward at midnight: 6 September 2026 begins at 01:00.
  it('and no day is lost after one that begins at 01:00', () => {
    const santiago = daily('America/Santiago');
    const days = openPeriods(santiago, utc('2026-09-06T05:00'), utc('2026-09-08T03:30')).map((period) => shown(period.opens));
    expect(days).toEqual(['2026-09-06T10:30', '2026-09-07T10:30', '2026-09-08T10:30']);
    expect(shown(dayEnd(santiago, utc('2026-09-05T12:00')))).toBe('2026-09-06T04:00');
    expect(shown(dayEnd(santiago, utc('2026-09-06T12:00')))).toBe('2026-09-07T03:00');
  });
});

describe('a shop closed at the weekend', () => {
  it.each([
    ['2026-03-06T07:29', false],
    ['2026-03-06T07:30', true],
    ['2026-03-06T16:59', true],
    ['2026-03-06T17:00', false],
    ['2026-03-07T12:00', false],
  ])('at %s is open: %s', (at, expected) => {
    expect(isOpen(LONDON, utc(at))).toBe(expected);
  });

  it.each([
    ['2026-03-06T07:30', '2026-03-06T07:30', '2026-03-06T17:00'],
    ['2026-03-06T07:31', '2026-03-09T07:30', '2026-03-06T17:00'],
    ['2026-03-06T17:00', '2026-03-09T07:30', '2026-03-09T17:00'],
    ['2026-03-08T12:00', '2026-03-09T07:30', '2026-03-09T17:00'],
  ])('after %s opens %s and closes %s', (at, opens, closes) => {
    expect([shown(nextOpening(LONDON, utc(at))), shown(nextClosing(LONDON, utc(at)))]).toEqual([opens, closes]);
  });

  it.each([
    ['2026-03-06T07:29', 'closing 2026-03-05T17:00', 'opening 2026-03-06T07:30'],
    ['2026-03-06T07:30', 'opening 2026-03-06T07:30', 'closing 2026-03-06T17:00'],
    ['2026-03-06T17:00', 'closing 2026-03-06T17:00', 'opening 2026-03-09T07:30'],
    ['2026-03-08T12:00', 'closing 2026-03-06T17:00', 'opening 2026-03-09T07:30'],
  ])('at %s the last bell was %s and the next is %s', (at, last, next) => {
    const bells = [lastBell(LONDON, utc(at)), nextBell(LONDON, utc(at))];
    expect(bells.map((one) => (one === null ? 'none' : `${one.bell} ${shown(one.at)}`))).toEqual([last, next]);
  });
});

describe('unusual hours', () => {
  const never: Hours = { zone: 'Europe/London', holidays: [], hours: { 1: null, 2: null, 3: null, 4: null, 5: null, 6: null, 7: null } };
  const at = utc('2026-03-06T12:00');
  it('a shop that never opens has no bells', () => {
    expect([nextOpening(never, at), nextClosing(never, at), nextBell(never, at), lastBell(never, at), isOpen(never, at)]).toEqual([null, null, null, null, false]);
  });
  it('a shop may close at midnight', () => {
    expect(shown(nextClosing({ zone: 'Europe/London', holidays: [], hours: weekdays('07:30', '24:00') }, at))).toBe('2026-03-07T00:00');
  });
});

it('a shop open from 00:00 to 24:00 closes only before a closed day', () => {
  const whole = { opens: 0, closes: 1440 };
  const shop: Hours = { zone: 'Europe/Berlin', holidays: [], hours: { 1: whole, 2: whole, 3: whole, 4: whole, 5: whole, 6: null, 7: null } };
  const tuesday = utc('2026-03-03T12:00');
  expect([shown(nextClosing(shop, tuesday)), shown(nextBell(shop, tuesday)?.at ?? null), nextBell(shop, tuesday)?.bell]).toEqual(['2026-03-06T23:00', '2026-03-03T23:00', 'opening']);
  expect(openPeriods(shop, tuesday, utc('2026-03-04T12:00')).map(({ opens, closes }) => [shown(opens), shown(closes)])).toEqual([['2026-03-02T23:00', '2026-03-06T23:00']]);
  expect(nextClosing({ ...shop, hours: { ...shop.hours, 6: whole, 7: whole } }, tuesday)).toBeNull();
});
