import { DateTime } from 'luxon';
import { instant, type Instant } from '../cure/units.js';

const WHOLE = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/;
const MONTH_OF_YEAR = /^(\d{4})[-/. ](\d{1,2})$/;
const MONTH_AND_YEAR = /^(\d{1,2})[-/. ](\d{4}|\d{2})$/;
const DAY_MONTH_YEAR = /^(\d{1,2})([-/.])(\d{1,2})[-/.](\d{4}|\d{2})$/;
const NAMED_MONTH = /^(?:(\d{1,2})[.\s-]*)?(\p{L}{3,10})\.?[\s/-]*(\d{4}|\d{2})$/u;
/** First letters of the months in English, German and Spanish. */
const MONTHS: readonly (readonly string[])[] = [['jan', 'jän', 'ene'], ['feb'], ['mar', 'mär', 'mrz'], ['apr', 'abr'], ['may', 'mai'], ['jun'], ['jul'], ['aug', 'ago'], ['sep'], ['oct', 'okt'], ['nov'], ['dec', 'dez', 'dic']];

/** A date of a label: its first moment, and the first moment after it. */
export interface LabelDate {
  readonly begins: Instant;
  readonly ends: Instant;
}

/**
 * `2027-03-31`, `31.03.2027`, `31 Mar 2027`, or a month, which lasts to its end: `03/27`, `2027-03`, `März 2027`. With
 * points or hyphens the day stands first, as in German and Spanish; with strokes day and month may stand either way round,
 * and then it is the earlier of the two. Null: no date.
 */
export function readLabelDate(text: string, zone: string): LabelDate | null {
  const typed = text.trim();
  const [, year, month, day] = WHOLE.exec(typed) ?? [];
  if (year !== undefined) return span(zone, year, month, day);
  const [, ownYear, itsMonth] = MONTH_OF_YEAR.exec(typed) ?? [];
  if (ownYear !== undefined) return span(zone, ownYear, itsMonth);
  const [, onlyMonth, itsYear] = MONTH_AND_YEAR.exec(typed) ?? [];
  if (onlyMonth !== undefined) return span(zone, itsYear, onlyMonth);
  return withNamedMonth(typed, zone) ?? dayAndMonth(typed, zone);
}

function withNamedMonth(typed: string, zone: string): LabelDate | null {
  const [, day, name = '', year] = NAMED_MONTH.exec(typed.toLowerCase()) ?? [];
  const month = MONTHS.findIndex((names) => names.some((one) => name.startsWith(one))) + 1;
  return month === 0 ? null : span(zone, year, `${month}`, day);
}

function dayAndMonth(typed: string, zone: string): LabelDate | null {
  const [, first, stroke, second, last] = DAY_MONTH_YEAR.exec(typed) ?? [];
  const dayFirst = span(zone, last, second, first);
  const monthFirst = stroke === '/' ? span(zone, last, first, second) : null;
  if (dayFirst === null || monthFirst === null) return dayFirst ?? monthFirst;
  return monthFirst.ends < dayFirst.ends ? monthFirst : dayFirst;
}

function span(zone: string, year: string | undefined, month: string | undefined, day?: string): LabelDate | null {
  if (year === undefined || month === undefined) return null;
  const whole = Number(year) < 100 ? 2000 + Number(year) : Number(year);
  const begins = DateTime.fromObject({ year: whole, month: Number(month), day: day === undefined ? 1 : Number(day) }, { zone });
  if (!begins.isValid) return null;
  return { begins: instant(begins.toMillis()), ends: instant(begins.plus(day === undefined ? { months: 1 } : { days: 1 }).toMillis()) };
}

/** The first moment at which something that was opened then has been open too long; the day of opening counts, since nobody wrote down the hour. */
export const openedUntil = ({ begins }: LabelDate, days: number, zone: string): Instant => instant(DateTime.fromMillis(begins, { zone }).plus({ days }).toMillis());
