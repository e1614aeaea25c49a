import { DateTime } from 'luxon';
import { z } from 'zod';
import { expects } from '../cure/closed-object.js';
import { MOST_CLOSED_DAYS } from '../repair/shop-hours.js';
import type { Shop } from '../repair/shop.js';

const DATE = /^\d{4}-\d{2}-\d{2}$/;
const DATE_WORDS = 'a date such as 2026-12-25: year, month, day';
/** A year outside is a typing error. */
const FIRST_YEAR = 2000;
const LAST_YEAR = 2199;

const dayOn = (date: string): DateTime => DateTime.fromISO(date, { zone: 'utc' });

/** YAML 1.2 has no dates of its own, but a file that says it is YAML 1.1 has: midnight in UTC. */
const written = z.date({ error: expects(DATE_WORDS) }).transform((date) => date.toISOString().replace('T00:00:00.000Z', ''));

const dateField = z.union([z.string().transform((text) => text.trim()), written], { error: expects(DATE_WORDS) }).superRefine((date, context) => {
  const refuse = (message: string) => {
    context.addIssue({ code: 'custom', message });
  };
  if (!DATE.test(date)) {
    refuse(`must be ${DATE_WORDS}`);
    return;
  }
  const day = dayOn(date);
  if (!day.isValid) refuse(`${date} is not in the calendar`);
  else if (day.year < FIRST_YEAR || day.year > LAST_YEAR) refuse(`${date} must lie in the years ${FIRST_YEAR} to ${LAST_YEAR}`);
});

/** Days on which the shop stays closed, sorted; each stands there once. */
export const holidaysField = z.array(dateField, { error: expects('a list of dates such as [2026-12-25, 2027-01-01]') }).superRefine((dates, context) => {
  for (const [index, date] of dates.entries()) {
    if (dates.indexOf(date) < index) context.addIssue({ code: 'custom', path: [index], message: `${date} stands in the list already` });
  }
});

/** The first of the holidays that, together with the days around them, keep the shop closed for too long; or null. */
export function endlessClosure({ hours, holidays }: Pick<Shop, 'hours' | 'holidays'>): { readonly holiday: string; readonly problem: string } | null {
  const week = [hours[1], hours[2], hours[3], hours[4], hours[5], hours[6], hours[7]];
  // A shop that never opens is not kept closed by its holidays.
  if (week.every((day) => day === null)) return null;
  const off = new Set(holidays);
  const closed = (day: DateTime): boolean => week[day.weekday - 1] === null || off.has(day.toFormat('yyyy-MM-dd'));
  for (const holiday of holidays.toSorted()) {
    let first = dayOn(holiday);
    while (closed(first.minus({ days: 1 }))) first = first.minus({ days: 1 });
    let days = 1;
    while (closed(first.plus({ days }))) days += 1;
    if (days > MOST_CLOSED_DAYS) return { holiday, problem: `would keep the shop closed for ${days} days from ${first.toFormat('yyyy-MM-dd')}; at most ${MOST_CLOSED_DAYS} days in a row can be, since nothing is asked meanwhile` };
  }
  return null;
}
