import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { instant, type Instant } from '../../../src/cure/units.js';
import { personId } from '../../../src/repair/ids.js';
import { nextShiftEnd, onShift } from '../../../src/repair/on-shift.js';
import { nextBell } from '../../../src/repair/shop-hours.js';
import { exampleShop } from '../../support/example-shop.js';

const ZONE = 'Europe/London';
const at = (local: string): Instant => instant(DateTime.fromISO(local, { zone: ZONE }).toMillis());
const utc = (moment: Instant | null | undefined): string => (moment == null ? 'never' : new Date(moment).toISOString().slice(0, 16));
const bo = personId('bo');
const night = exampleShop({ zone: ZONE, shifts: [{ name: 'night', days: [1, 2, 3, 4, 5, 6, 7], begins: 22 * 60, ends: 30 * 60, people: [bo] }], holidays: ['2026-12-25'] });

describe('a night shift from 22:00 to 06:00', () => {
  it.each([
    ['an ordinary night', '2026-03-10T23:00', '2026-03-10T22:00', '2026-03-11T06:00'],
    ['clocks go forward: an hour less', '2026-03-28T23:00', '2026-03-28T22:00', '2026-03-29T05:00'],
    ['clocks go back: an hour more', '2026-10-24T23:00', '2026-10-24T21:00', '2026-10-25T06:00'],
    ['into a holiday: it goes on to its end', '2026-12-24T23:00', '2026-12-24T22:00', '2026-12-25T06:00'],
    ['on a holiday none begins', '2026-12-25T23:00', '2026-12-26T22:00', '2026-12-27T06:00'],
    ['over the turn of the year', '2026-12-31T23:30', '2026-12-31T22:00', '2027-01-01T06:00'],
  ])('%s', (_what, when, begins, ends) => {
    const span = nextShiftEnd(night, bo, at(when));
    expect([utc(span?.begins), utc(span?.ends)]).toEqual([begins, ends]);
  });

  it.each([
    ['2026-10-25T00:30', true],
    ['2026-10-25T05:59', true],
    ['2026-10-25T06:00', false],
    ['2026-03-29T05:59', true],
    ['2026-03-29T06:00', false],
    ['2026-12-25T05:00', true],
    ['2026-12-25T22:30', false],
  ])('%s at work: %s', (when, works) => {
    expect(onShift(night, bo, at(when))).toBe(works);
  });
});

it.each([
  ['on the day the clocks go forward', '2026-03-30T00:00', '2026-03-30T06:30'],
  ['on the day after they go back', '2026-10-26T00:00', '2026-10-26T07:30'],
  ['after a holiday', '2026-12-25T00:00', '2026-12-28T07:30'],
])('the opening bundle is at 07:30 of the shop %s', (_what, from, opens) => {
  expect(utc(nextBell(night, at(from))?.at)).toBe(opens);
});
