import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { instant, type Instant } from '../../../src/cure/units.js';
import { personId } from '../../../src/repair/ids.js';
import { allOnShift, nextOnShift, onShift } from '../../../src/repair/on-shift.js';
import { foremanAt, foremanOnDuty } from '../../../src/repair/people.js';
import type { Shop, ShopShift } from '../../../src/repair/shop.js';
import { exampleShop, weekdays } from '../../support/example-shop.js';

const minute = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3));

/** `early 12345 06:00-14:00 ines tomek`; an end before the begin is on the next day. */
function shift(line: string): ShopShift {
  const [name = '', days = '', hours = '', ...people] = line.split(' ');
  const [begins = 0, ends = 0] = hours.split('-').map(minute);
  return { name, days: Array.from(days, Number), begins, ends: ends > begins ? ends : ends + 1440, people: people.map(personId) };
}

const withShifts = (...lines: string[]): Shop => exampleShop({ zone: 'Europe/Berlin', holidays: ['2026-10-28'], shifts: lines.map(shift) });
const local = (iso: string): Instant => instant(DateTime.fromISO(iso, { zone: 'Europe/Berlin' }).toMillis());
const [ines, tomek, wren] = ['ines', 'tomek', 'wren'].map(personId);

const ROUND_THE_CLOCK = withShifts('early 12345 06:00-14:00 ines', 'late 12345 14:00-22:00 tomek', 'night 123456 22:00-06:00 wren');

describe('who is on shift', () => {
  it.each([
    ['before the early shift', '2026-10-20T05:59:59', ['wren']],
    ['at its first minute', '2026-10-20T06:00', ['ines']],
    ['at the minute it ends', '2026-10-20T14:00', ['tomek']],
    ['in the night, before midnight', '2026-10-20T23:59', ['wren']],
    ['in the night, after midnight', '2026-10-21T00:00', ['wren']],
    ['on Sunday morning, in the night that began on Saturday', '2026-10-25T05:00', ['wren']],
    ['on Sunday evening', '2026-10-25T22:30', []],
    ['on Monday before six, since Sunday has no night', '2026-10-26T05:00', []],
    ['on a holiday', '2026-10-28T10:00', []],
    ['on a holiday, in the night that began the day before', '2026-10-28T05:59', ['wren']],
    ['in the night that would begin on the holiday', '2026-10-29T01:00', []],
    // The night of 25 October 2026 has 25 hours: 02:30 comes twice.
    ['at half past two for the second time', '2026-10-25T01:30Z', ['wren']],
  ])('%s', (_, when, people) => {
    const at = when.endsWith('Z') ? instant(Date.parse(when)) : local(when);
    expect(allOnShift(ROUND_THE_CLOCK, at)).toEqual(people);
  });

  it('counts a night of changing clocks by the wall clock', () => {
    const night = withShifts('night 6 22:00-06:00 wren');
    const hours = (from: string): number => {
      let minutes = 0;
      for (let at = local(from); at < local(from) + 12 * 3_600_000; at = instant(at + 60_000)) if (onShift(night, personId('wren'), at)) minutes += 1;
      return minutes / 60;
    };
    expect([hours('2026-10-24T20:00'), hours('2026-03-28T20:00'), hours('2026-10-17T20:00')]).toEqual([9, 7, 8]);
  });

  it('is everybody while the shop is open where it has no shifts', () => {
    const shop = exampleShop({ hours: weekdays('07:30', '17:00') });
    expect([onShift(shop, personId('wren'), instant(Date.parse('2026-03-02T07:30Z'))), onShift(shop, personId('wren'), instant(Date.parse('2026-03-02T17:00Z')))]).toEqual([true, false]);
    expect(allOnShift(shop, instant(Date.parse('2026-03-02T08:00Z')))).toEqual([]);
  });

  it('begins next at the next shift, past holidays', () => {
    const next = (who: string, when: string): string | null => {
      const at = nextOnShift(ROUND_THE_CLOCK, personId(who), local(when));
      return at === null ? null : DateTime.fromMillis(at, { zone: 'Europe/Berlin' }).toFormat('yyyy-MM-dd HH:mm');
    };
    expect([next('ines', '2026-10-20T07:00'), next('ines', '2026-10-20T14:00'), next('ines', '2026-10-27T14:00'), next('nobody', '2026-10-27T14:00')]).toEqual(['2026-10-20 07:00', '2026-10-21 06:00', '2026-10-29 06:00', null]);
  });

  it('has the foreman on duty, else the first on the list where something waits for nobody', () => {
    const foreman = { id: personId('bo'), name: 'Bo', role: 'foreman' as const, chatId: null, language: 'en' as const, unit: null };
    const shop = { ...withShifts('early 12345 06:00-14:00 ines', 'night 12345 22:00-06:00 bo'), people: [...exampleShop().people, foreman] };
    const at = (when: string): unknown[] => [foremanOnDuty(shop, local(when)), foremanAt(shop, local(when))];
    expect([at('2026-10-20T07:00'), at('2026-10-20T23:00'), at('2026-10-20T18:00')]).toEqual([['ines', 'ines'], ['bo', 'bo'], [null, 'ines']]);
  });
});

describe('whatever the shifts', () => {
  const shifts = fc.array(
    fc.record({ days: fc.subarray([1, 2, 3, 4, 5, 6, 7], { minLength: 1 }), begins: fc.integer({ min: 0, max: 1439 }), length: fc.integer({ min: 1, max: 1440 }), who: fc.constantFrom(ines, tomek, wren) }),
    { minLength: 1, maxLength: 4 },
  );
  /** Two weeks round each change of the clocks. */
  const moment = fc.tuple(fc.constantFrom('2026-03-22', '2026-10-18'), fc.integer({ min: 0, max: 14 * 1440 })).map(([day, minutes]) => instant(local(day) + minutes * 60_000));
  const shopOf = (some: readonly { days: readonly number[]; begins: number; length: number; who: ReturnType<typeof personId> | undefined }[]): Shop =>
    exampleShop({ zone: 'Europe/Berlin', holidays: ['2026-10-28'], shifts: some.map(({ days, begins, length, who }, index) => ({ name: `s${index}`, days, begins, ends: Math.min(begins + length, begins + 1440), people: who === undefined ? [] : [who] })) });

  it('the next time at work is at work, and nothing before it is', () => {
    fc.assert(
      fc.property(shifts, moment, (some, at) => {
        const shop = shopOf(some);
        const next = nextOnShift(shop, personId('wren'), at);
        if (next === null) return;
        expect(onShift(shop, personId('wren'), next)).toBe(true);
        for (let before = at; before < next; before = instant(before + 3_600_000)) expect(onShift(shop, personId('wren'), before)).toBe(false);
      }),
      { numRuns: 150 },
    );
  });

  it('being at work is what the wall clock says, told with calendar days instead of moments', () => {
    fc.assert(
      fc.property(shifts, moment, (some, at) => {
        const shop = shopOf(some);
        const now = DateTime.fromMillis(at, { zone: shop.zone });
        const covered = shop.shifts.some((one) => one.people.includes(personId('wren')) && [0, 1].some((ago) => {
          const day = now.minus({ days: ago }).startOf('day');
          if (!one.days.includes(day.weekday) || day.toISODate() === '2026-10-28') return false;
          const wall = (minutes: number): number => DateTime.fromObject({ year: day.year, month: day.month, day: day.day }, { zone: shop.zone }).plus({ days: Math.floor(minutes / 1440) }).set({ hour: Math.floor((minutes % 1440) / 60), minute: minutes % 60 }).toMillis();
          return wall(one.begins) <= at && at < wall(one.ends);
        }));
        expect(onShift(shop, personId('wren'), at)).toBe(covered);
      }),
      { numRuns: 300 },
    );
  });
});
