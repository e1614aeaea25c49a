import { DateTime } from 'luxon';
import { instant, type Instant } from '../cure/units.js';
import type { PersonId } from './ids.js';
import type { Shop, ShopShift } from './shop.js';
import { isOpen } from './shop-hours.js';

/** Shifts of one person come back within a week, but for holidays; the search for the next ends here. */
const DAYS_SEARCHED = 21;
const DAY_MINUTES = 24 * 60;

/** One working time of one shift, by the shop's wall clock. */
export interface Span {
  readonly begins: Instant;
  readonly ends: Instant;
}

type Calendar = Pick<Shop, 'zone' | 'hours' | 'holidays' | 'shifts'>;

/** Whether a person works at this moment. Without shifts everybody works while the shop is open. */
export function onShift(shop: Calendar, person: PersonId, at: Instant): boolean {
  if (shop.shifts.length === 0) return isOpen(shop, at);
  const today = dayOf(shop, at);
  // A shift that began yesterday may run past midnight.
  return [today.minus({ days: 1 }), today].some((day) => spansOn(shop, person, day).some((span) => span.begins <= at && at < span.ends));
}

/** This moment where the person works now, else when their next shift begins; null: none within three weeks, or no shifts at all. */
export function nextOnShift(shop: Calendar, person: PersonId, at: Instant): Instant | null {
  if (shop.shifts.length === 0) return null;
  if (onShift(shop, person, at)) return at;
  const today = dayOf(shop, at);
  for (let days = 0; days <= DAYS_SEARCHED; days += 1) {
    const begins = spansOn(shop, person, today.plus({ days })).map((span) => span.begins).filter((one) => one > at);
    if (begins.length > 0) return instant(Math.min(...begins));
  }
  return null;
}

/** The next working time of a person that ends after this moment, with nothing of theirs following on it; null: none within three weeks. */
export function nextShiftEnd(shop: Calendar, person: PersonId, after: Instant): Span | null {
  const today = dayOf(shop, after);
  for (let days = -1; days <= DAYS_SEARCHED; days += 1) {
    const ending = spansOn(shop, person, today.plus({ days })).filter(({ ends }) => ends > after && !onShift(shop, person, ends));
    const first = ending.toSorted((one, other) => one.ends - other.ends).at(0);
    if (first !== undefined) return first;
  }
  return null;
}

/** Everybody who works at this moment, in the order of the shop's list; nobody is named where the shop has no shifts. */
export const allOnShift = (shop: Shop, at: Instant): PersonId[] => (shop.shifts.length === 0 ? [] : shop.people.flatMap(({ id }) => (onShift(shop, id, at) ? [id] : [])));

const dayOf = ({ zone }: Calendar, at: Instant): DateTime => DateTime.fromMillis(at, { zone }).startOf('day');

/** No shift begins on a holiday; one that began the day before goes on to its end. */
function spansOn(shop: Calendar, person: PersonId, day: DateTime): Span[] {
  if (shop.holidays.some((holiday) => holiday === day.toISODate())) return [];
  return shop.shifts.filter((shift) => shift.days.includes(day.weekday) && shift.people.includes(person)).map((shift) => spanOf(shift, day));
}

/** Wall-clock times: a night in which the clocks change is an hour longer or shorter. */
function spanOf({ begins, ends }: ShopShift, day: DateTime): Span {
  const last = ends > DAY_MINUTES ? wallClock(day.plus({ days: 1 }), ends - DAY_MINUTES) : wallClock(day, ends);
  return { begins: wallClock(day, begins), ends: last };
}

const wallClock = (day: DateTime, minutesOfDay: number): Instant =>
  minutesOfDay === DAY_MINUTES ? instant(day.plus({ days: 1 }).startOf('day').toMillis()) : instant(day.set({ hour: Math.floor(minutesOfDay / 60), minute: minutesOfDay % 60 }).toMillis());
