import type { OpenPeriod } from '../cure/air.js';
import type { Instant } from '../cure/units.js';
import { dayAfter, dayBefore, shopDay, type Hours, type ShopDay } from './shop-days.js';

export type Bell = 'opening' | 'closing';

/** A daily moment at which the channel gets its bundle. */
export interface BellTime {
  readonly bell: Bell;
  readonly at: Instant;
}

/** So many days in a row a shop may stay closed; shop.yaml is refused beyond it. */
export const MOST_CLOSED_DAYS = 20;
/** From one open day to the next over the longest closure: the search for an opening or a closing ends here. */
const DAYS_SEARCHED = MOST_CLOSED_DAYS + 1;

/** Opening periods of the days that the stretch from `from` to `to` touches, in order; what goes on over midnight is one. */
export function openPeriods(shop: Hours, from: Instant, to: Instant): OpenPeriod[] {
  const periods: OpenPeriod[] = [];
  for (let day = shopDay(shop, from); day.begins <= to; day = dayAfter(shop, day)) {
    if (day.period !== null && (periods.at(-1)?.closes ?? 0) < day.period.closes) periods.push(wholePeriod(shop, day.period));
  }
  return periods;
}

/** Up to where the doors close: a shop that is open from 00:00 to 24:00 goes on the next day. */
function wholePeriod(shop: Hours, first: OpenPeriod): OpenPeriod {
  let whole = first;
  for (let days = 0; days <= DAYS_SEARCHED && isOpen(shop, whole.closes); days += 1) whole = { ...(shopDay(shop, whole.closes).period ?? whole), opens: first.opens };
  return whole;
}

export function isOpen(shop: Hours, at: Instant): boolean {
  const { period } = shopDay(shop, at);
  return period !== null && period.opens <= at && at < period.closes;
}

/** First opening at or after this moment; null for a shop that never opens. */
export const nextOpening = (shop: Hours, at: Instant): Instant | null =>
  searchDays(shop, at, dayAfter, (period) => (period.opens >= at ? period.opens : null));

/** First closing strictly after this moment; null for a shop that never closes. */
export const nextClosing = (shop: Hours, at: Instant): Instant | null =>
  searchDays(shop, at, dayAfter, (period) => (period.closes > at && !isOpen(shop, period.closes) ? period.closes : null));

/** First closing strictly after this moment that begins a closure of a whole day or more; null: none within three weeks. */
export const nextLongClosing = (shop: Hours, at: Instant): Instant | null =>
  searchDays(shop, at, dayAfter, (period) => (period.closes > at && period.longClosureAfter ? period.closes : null));

/** The latest closing at or before this moment. */
export const lastClosing = (shop: Hours, at: Instant): Instant | null =>
  searchDays(shop, at, dayBefore, (period) => (period.closes <= at && !isOpen(shop, period.closes) ? period.closes : null));

/** The midnight that ends the shop's day. */
export const dayEnd = (shop: Hours, at: Instant): Instant => shopDay(shop, at).ends;

/** First opening or closing strictly after this moment. */
export const nextBell = (shop: Hours, after: Instant): BellTime | null =>
  searchDays(shop, after, dayAfter, (period) => bells(shop, period).find((one) => one.at > after) ?? null);

/** The latest opening or closing at or before this moment. */
export const lastBell = (shop: Hours, at: Instant): BellTime | null =>
  searchDays(shop, at, dayBefore, (period) => bells(shop, period).findLast((one) => one.at <= at) ?? null);

const bells = (shop: Hours, { opens, closes }: OpenPeriod): BellTime[] => [{ bell: 'opening', at: opens }, ...(isOpen(shop, closes) ? [] : [{ bell: 'closing', at: closes } as const])];

/** Day by day, since the answer nearly always stands in the first. */
function searchDays<T>(shop: Hours, from: Instant, step: (shop: Hours, day: ShopDay) => ShopDay, found: (period: OpenPeriod) => T | null): T | null {
  let day = shopDay(shop, from);
  for (let days = 0; days <= DAYS_SEARCHED; days += 1) {
    const hit = day.period === null ? null : found(day.period);
    if (hit !== null) return hit;
    day = step(shop, day);
  }
  return null;
}
