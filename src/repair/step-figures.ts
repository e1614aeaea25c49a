import { DateTime } from 'luxon';
import { celsius, celsiusFromFahrenheit, instant, type Celsius, type Instant } from '../cure/units.js';

/** What stands on a label or a meter, out of the words that were typed. */
export interface ClimateFigure {
  readonly value: Celsius;
  readonly humidity: number | null;
  /** The same with its unit, as it is kept. */
  readonly text: string;
}

const CLIMATE = /^(?:air|metal|panel)?\s*(-?\d{1,3}(?:[.,]\d+)?)\s*°?\s*([cf])?(?:[\s,]+(?:(?:rh|hum(?:idity)?)\s*(\d{1,3}(?:[.,]\d+)?)\s*%?|(\d{1,3}(?:[.,]\d+)?)\s*%(?:\s*rh)?))?$/iu;
/** Colder or hotter than this is a typing error, or the other unit. */
const COLDEST = -20;
const HOTTEST = 60;

/** `18,5`, `64F`, `19 rh 55`; null: no such figure. A unit that nobody typed is `unit`. */
export function readClimate(text: string, unit: 'C' | 'F'): ClimateFigure | null {
  const [, typed, typedUnit, after, before] = CLIMATE.exec(text.trim()) ?? [];
  if (typed === undefined) return null;
  const figure = number(typed);
  const said = (typedUnit ?? unit).toUpperCase();
  const value = said === 'F' ? celsiusFromFahrenheit(figure) : celsius(figure);
  const damp = after ?? before;
  const humidity = damp === undefined ? null : number(damp);
  if (value < COLDEST || value > HOTTEST || (humidity !== null && (humidity <= 0 || humidity > 100))) return null;
  return { value, humidity, text: `${figure}${said}${humidity === null ? '' : ` rh ${humidity}`}` };
}

const number = (typed: string): number => Number(typed.replace(',', '.'));

const WHOLE = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/;
const MONTH_OF_YEAR = /^(\d{4})[-/.](\d{1,2})$/;
const MONTH_AND_YEAR = /^(\d{1,2})[-/.](\d{4}|\d{2})$/;
const DAY_MONTH_YEAR = /^(\d{1,2})([-/.])(\d{1,2})[-/.](\d{4}|\d{2})$/;

/** A date of a label: its first moment, and the first moment after it. */
export interface LabelDate {
  readonly begins: Instant;
  readonly ends: Instant;
}

/**
 * `2027-03-31`, `31.03.2027`, or a month, which lasts to its end: `03/2027`. With strokes day and month may stand either
 * way round; then it is the earlier of the two. Null: no date.
 */
export function readLabelDate(text: string, zone: string): LabelDate | null {
  const typed = text.trim();
  const [, year, month, day] = WHOLE.exec(typed) ?? [];
  if (year !== undefined) return span(zone, year, month, day);
  const [, ownYear, itsMonth] = MONTH_OF_YEAR.exec(typed) ?? [];
  if (ownYear !== undefined) return span(zone, ownYear, itsMonth);
  const [, onlyMonth, itsYear] = MONTH_AND_YEAR.exec(typed) ?? [];
  if (onlyMonth !== undefined) return span(zone, itsYear, onlyMonth);
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
