import { z } from 'zod';
import { expects } from '../cure/closed-object.js';
import type { OpeningHours, Shop } from '../repair/shop.js';
import { nearest } from './nearest.js';

const DAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
const DAY_NUMBERS = [1, 2, 3, 4, 5, 6, 7] as const;
export const HOURS = /^(\d{1,2}):(\d{2})\s*[-–]\s*(\d{1,2}):(\d{2})$/;
export const END_OF_DAY = 24 * 60;
const HOURS_WORDS = 'hours such as 07:30-17:00, or closed';

/** `mon-fri: 07:30-17:00`, `sat: closed`: each day of the week stands there exactly once. */
export const hoursField = z.record(z.string(), z.string({ error: expects(HOURS_WORDS) }), { error: expects('days with their opening hours') }).transform((plain, context): Shop['hours'] => {
  const hours: Record<(typeof DAY_NUMBERS)[number], OpeningHours | null> = { 1: null, 2: null, 3: null, 4: null, 5: null, 6: null, 7: null };
  const givenBy = new Map<number, string>();
  for (const [key, text] of Object.entries(plain)) {
    const refuse = (message: string) => {
      context.addIssue({ code: 'custom', path: [key], message });
    };
    const open = openingHours(text);
    if (typeof open === 'string') refuse(open);
    const days = daysOf(key);
    if (typeof days === 'string') {
      refuse(days);
      continue;
    }
    for (const day of days) {
      const before = givenBy.get(day);
      if (before !== undefined) refuse(`${dayName(day)} is given under ${before} already`);
      givenBy.set(day, key);
      if (typeof open !== 'string') hours[day] = open;
    }
  }
  const missing = DAY_NUMBERS.filter((day) => !givenBy.has(day)).map(dayName);
  if (missing.length > 0) context.addIssue({ code: 'custom', message: `says nothing about ${missing.join(', ')}: write the hours, or closed` });
  return hours;
});

/** The hours, null for closed, or what is wrong. */
function openingHours(text: string): OpeningHours | null | string {
  if (text.trim().toLowerCase() === 'closed') return null;
  const found = HOURS.exec(text.trim());
  if (found === null) return `must be ${HOURS_WORDS}`;
  const opens = minuteOfDay(found[1], found[2]);
  const closes = minuteOfDay(found[3], found[4]);
  if (opens === null || closes === null) return `${text} is no time of day: write 00:00 to 24:00`;
  if (opens >= closes) return 'must open before it closes; hours that run past midnight cannot be written yet';
  return { opens, closes };
}

/** Minutes after midnight, 24:00 included; null: no time of day. */
export function minuteOfDay(hour: string | undefined, minute: string | undefined): number | null {
  const total = Number(hour) * 60 + Number(minute);
  return Number(minute) < 60 && total <= END_OF_DAY ? total : null;
}

/** The days a key names, or what is wrong with it. */
export function daysOf(key: string): (typeof DAY_NUMBERS)[number][] | string {
  const names = key.toLowerCase().split('-').map((name) => name.trim());
  const [first = '', last = first, ...more] = names;
  const from = DAYS.findIndex((day) => day === first);
  const to = DAYS.findIndex((day) => day === last);
  if (more.length > 0) return 'must be one day or two days with a hyphen';
  if (from === -1 || to === -1) return unknownDay(from === -1 ? first : last);
  if (from > to) return `runs backwards: write ${last}-${first}, or the days one by one`;
  return DAY_NUMBERS.slice(from, to + 1);
}

function unknownDay(name: string): string {
  const meant = nearest(name, DAYS);
  return `is not a day; ${meant === null ? `days are ${DAYS.join(', ')}` : `did you mean ${meant}?`}`;
}

export const dayName = (day: number): string => DAYS[day - 1] ?? String(day);
