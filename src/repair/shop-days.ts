import { DateTime } from 'luxon';
import type { OpenPeriod } from '../cure/air.js';
import { instant, type Instant } from '../cure/units.js';
import type { OpeningHours, Shop } from './shop.js';

/** What decides when a shop is open. */
export type Hours = Pick<Shop, 'zone' | 'hours' | 'holidays'>;

/** One day of the shop's calendar, from midnight to midnight by its wall clock. */
export interface ShopDay {
  readonly begins: Instant;
  /** The first moment of the day after. */
  readonly ends: Instant;
  /** Null on a closed day. */
  readonly period: OpenPeriod | null;
}

const UTC_DAY = 24 * 3_600_000;

/** Days by each UTC day that they touch; the calendar of a shop never changes, it is only worked out once. */
type Calendar = Map<number, ShopDay[]>;
const calendars = new WeakMap<Shop['hours'], Map<string, Calendar>>();

/** The shop's day that holds this moment. */
export function shopDay(shop: Hours, at: Instant): ShopDay {
  const calendar = calendarOf(shop);
  const touching = calendar.get(Math.floor(at / UTC_DAY)) ?? [];
  const known = touching.find((day) => day.begins <= at && at < day.ends);
  if (known !== undefined) return known;
  const day = workedOut(shop, at);
  for (let touched = Math.floor(day.begins / UTC_DAY); touched * UTC_DAY < day.ends; touched += 1) calendar.set(touched, [...(calendar.get(touched) ?? []), day]);
  return day;
}

export const dayAfter = (shop: Hours, day: ShopDay): ShopDay => shopDay(shop, day.ends);
export const dayBefore = (shop: Hours, day: ShopDay): ShopDay => shopDay(shop, instant(day.begins - 1));

function calendarOf({ zone, hours, holidays }: Hours): Calendar {
  const byDays = calendars.get(hours) ?? new Map<string, Calendar>();
  calendars.set(hours, byDays);
  const key = [zone, ...holidays].join(' ');
  const calendar = byDays.get(key) ?? new Map<number, ShopDay[]>();
  byDays.set(key, calendar);
  return calendar;
}

function workedOut(shop: Hours, at: Instant): ShopDay {
  const day = DateTime.fromMillis(at, { zone: shop.zone }).startOf('day');
  // Where the clocks change at midnight a day begins at 01:00, and the day after must not.
  const next = day.plus({ days: 1 }).startOf('day');
  const hours = hoursOn(shop, day);
  const period = hours === null ? null : { opens: timeOfDay(day, hours.opens), closes: timeOfDay(day, hours.closes), longClosureAfter: hoursOn(shop, next) === null };
  return { begins: instant(day.toMillis()), ends: instant(next.toMillis()), period };
}

function hoursOn({ hours, holidays }: Hours, day: DateTime): OpeningHours | null {
  const days = [hours[1], hours[2], hours[3], hours[4], hours[5], hours[6], hours[7]];
  return holidays.some((holiday) => holiday === day.toISODate()) ? null : (days[day.weekday - 1] ?? null);
}

/** Wall-clock time, not minutes since midnight: on a day with a clock change the two differ. */
const timeOfDay = (day: DateTime, minutesOfDay: number): Instant =>
  instant(day.set({ hour: Math.floor(minutesOfDay / 60), minute: minutesOfDay % 60 }).toMillis());
