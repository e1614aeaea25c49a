import { DateTime } from 'luxon';
import type { OpenPeriod } from '../cure/air.js';
import { instant, type Instant } from '../cure/units.js';
import type { OpeningHours, Shop } from './shop.js';

export type Bell = 'opening' | 'closing';

/** A daily moment at which the channel gets its bundle. */
export interface BellTime {
  readonly bell: Bell;
  readonly at: Instant;
}

/** No shop is closed longer than this in a row; the search for the next opening ends here. */
const DAYS_SEARCHED = 21;

type Hours = Pick<Shop, 'zone' | 'hours'>;

/** Opening periods that touch the stretch from `from` to `to`, in order. */
export function openPeriods(shop: Hours, from: Instant, to: Instant): OpenPeriod[] {
  const periods: OpenPeriod[] = [];
  const last = DateTime.fromMillis(to, { zone: shop.zone }).startOf('day');
  for (let day = DateTime.fromMillis(from, { zone: shop.zone }).startOf('day'); day <= last; day = day.plus({ days: 1 })) {
    const period = periodOf(shop, day);
    if (period !== null) periods.push(period);
  }
  return periods;
}

export function isOpen(shop: Hours, at: Instant): boolean {
  return openPeriods(shop, at, at).some((period) => period.opens <= at && at < period.closes);
}

/** First opening at or after this moment; null for a shop that never opens. */
export const nextOpening = (shop: Hours, at: Instant): Instant | null =>
  searchDays(shop, at, (period) => (period.opens >= at ? period.opens : null));

/** First closing strictly after this moment. */
export const nextClosing = (shop: Hours, at: Instant): Instant | null =>
  searchDays(shop, at, (period) => (period.closes > at ? period.closes : null));

/** The midnight that ends the shop's day. */
export const dayEnd = (shop: Hours, at: Instant): Instant =>
  instant(DateTime.fromMillis(at, { zone: shop.zone }).startOf('day').plus({ days: 1 }).toMillis());

/** First opening or closing strictly after this moment. */
export const nextBell = (shop: Hours, after: Instant): BellTime | null =>
  searchDays(shop, after, (period) => bells([period]).find((one) => one.at > after) ?? null);

/** The latest opening or closing at or before this moment, if it lies within the last week. */
export function lastBell(shop: Hours, at: Instant): BellTime | null {
  const weekBefore = instant(DateTime.fromMillis(at, { zone: shop.zone }).minus({ days: 7 }).toMillis());
  return bells(openPeriods(shop, weekBefore, at)).filter((one) => one.at <= at).at(-1) ?? null;
}

const bells = (periods: readonly OpenPeriod[]): BellTime[] =>
  periods.flatMap((period): BellTime[] => [
    { bell: 'opening', at: period.opens },
    { bell: 'closing', at: period.closes },
  ]);

/** Day by day, since the answer nearly always stands in the first. */
function searchDays<T>(shop: Hours, from: Instant, found: (period: OpenPeriod) => T | null): T | null {
  const first = DateTime.fromMillis(from, { zone: shop.zone }).startOf('day');
  for (let days = 0; days <= DAYS_SEARCHED; days += 1) {
    const period = periodOf(shop, first.plus({ days }));
    const hit = period === null ? null : found(period);
    if (hit !== null) return hit;
  }
  return null;
}

function periodOf(shop: Hours, day: DateTime): OpenPeriod | null {
  const hours = hoursOn(shop, day.weekday);
  return hours === null ? null : { opens: timeOfDay(day, hours.opens), closes: timeOfDay(day, hours.closes) };
}

function hoursOn(shop: Hours, weekday: number): OpeningHours | null {
  const days = [shop.hours[1], shop.hours[2], shop.hours[3], shop.hours[4], shop.hours[5], shop.hours[6], shop.hours[7]];
  return days[weekday - 1] ?? null;
}

/** Wall-clock time, not minutes since midnight: on a day with a clock change the two differ. */
const timeOfDay = (day: DateTime, minutesOfDay: number): Instant =>
  instant(day.set({ hour: Math.floor(minutesOfDay / 60), minute: minutesOfDay % 60 }).toMillis());
