import { DateTime } from 'luxon';
import { instant } from '../cure/units.js';
import { unitMinutes } from './time-words.js';
import type { Shape, Stamp, TypedClock } from './token.js';

const NUMBER = /^(-?\d{1,7})(?:([.,])(\d{1,2}))?$/;
const MARKED = /^#(\d{1,7})$/;
const DEGREES = /^(-?\d{1,7}(?:[.,]\d{1,2})?)(°|deg|degrees?)?(c|f|celsius|fahrenheit)?$/;
const PERCENT = /^(\d{1,3}(?:[.,]\d)?)%$/;
const DEPTH = /^(-?\d{1,4}(?:[.,]\d{1,2})?)mm$/;
const COLON_CLOCK = /^(\d{1,2}):(\d{2})(am|pm|h|uhr)?$/;
const POINT_CLOCK = /^(\d{1,2})\.(\d{2})(am|pm)$/;
const HOUR_CLOCK = /^(\d{1,2})()(am|pm)$/;
const HOURS_AND_MINUTES = /^(\d{1,2})([a-z]{1,7})(\d{1,2})([a-z]{1,7})?$/;
const AMOUNT = /^(\d{1,5}(?:[.,]\d{1,2})?)([a-z]{1,7})$/;
const RANGE = /^(\d{1,4})-(\d{1,4})([a-z]{1,7})?$/;
const LOCAL = /^(\d{4})-(\d{2})-(\d{2})t(\d{2}):(\d{2})(?::(\d{2}))?$/;
const ZONED = /^\d{4}-\d{2}-\d{2}t\d{2}:\d{2}(?::\d{2}(?:\.\d{1,3})?)?(?:z|[+-]\d{2}:?\d{2})$/;

/** The meaning a piece has by its shape, in the order in which one shape excludes the next; null: it has none. */
export function shapeOf(text: string): Shape | null {
  if (text.length > 30) return null;
  return number(text) ?? marked(text) ?? clock(text) ?? degrees(text) ?? percent(text) ?? depth(text) ?? amount(text) ?? range(text) ?? stamp(text);
}

function number(text: string): Shape | null {
  const [, front, sign, after] = NUMBER.exec(text) ?? [];
  if (front === undefined) return null;
  const whole = after === undefined && !front.startsWith('-');
  const couldBeClock = after?.length === 2 && /^\d{1,2}$/.test(front) && Number(front) < 24 && Number(after) < 60;
  return { kind: 'number', value: decimal(text), whole, marked: false, comma: sign === ',', clock: couldBeClock ? clockOf(front, after, undefined) : null };
}

function marked(text: string): Shape | null {
  const [, digits] = MARKED.exec(text) ?? [];
  return digits === undefined ? null : { kind: 'number', value: Number(digits), whole: true, marked: true, comma: false, clock: null };
}

function clock(text: string): Shape | null {
  const [, hour, minute, half] = COLON_CLOCK.exec(text) ?? POINT_CLOCK.exec(text) ?? HOUR_CLOCK.exec(text) ?? [];
  return hour === undefined ? null : { kind: 'clock', clock: clockOf(hour, minute ?? '', half) };
}

const clockOf = (hour: string, minute: string, half: string | undefined): TypedClock => ({
  hour: Number(hour),
  minute: Number(minute),
  half: half === 'am' || half === 'pm' ? half : null,
  padded: hour.length === 2 && hour.startsWith('0'),
});

function degrees(text: string): Shape | null {
  const [, value, sign, unit] = DEGREES.exec(text) ?? [];
  if (value === undefined || (sign === undefined && unit === undefined)) return null;
  return { kind: 'degrees', value: decimal(value), unit: unit === undefined ? null : unit.startsWith('c') ? 'C' : 'F' };
}

function percent(text: string): Shape | null {
  const [, value] = PERCENT.exec(text) ?? [];
  return value === undefined ? null : { kind: 'percent', value: decimal(value) };
}

function depth(text: string): Shape | null {
  const [, value] = DEPTH.exec(text) ?? [];
  return value === undefined ? null : { kind: 'depth', millimetres: decimal(value) };
}

function amount(text: string): Shape | null {
  const [, hours, hourWord = '', minutes, minuteWord] = HOURS_AND_MINUTES.exec(text) ?? [];
  if (hours !== undefined) {
    const plain = unitMinutes(hourWord) === 60 && (minuteWord === undefined || unitMinutes(minuteWord) === 1);
    return plain ? { kind: 'amount', minutes: Number(hours) * 60 + Number(minutes), written: null } : null;
  }
  const [, value, unit = ''] = AMOUNT.exec(text) ?? [];
  const each = unitMinutes(unit);
  if (value === undefined || each === null) return null;
  const either = each === 60 && /^\d{1,2}[.,][0-5]\d$/.test(value);
  return { kind: 'amount', minutes: Math.round(decimal(value) * each), written: either ? value : null };
}

function range(text: string): Shape | null {
  const [, one, other, unit] = RANGE.exec(text) ?? [];
  if (one === undefined || other === undefined) return null;
  const each = unit === undefined ? null : unitMinutes(unit);
  if (unit !== undefined && each === null) return null;
  return { kind: 'range', least: Math.min(Number(one), Number(other)), most: Math.max(Number(one), Number(other)), unitMinutes: each };
}

function stamp(text: string): Shape | null {
  const found = stampOf(text);
  return found === null ? null : { kind: 'stamp', stamp: found };
}

function stampOf(text: string): Stamp | null {
  if (ZONED.test(text)) {
    const moment = DateTime.fromISO(text.toUpperCase());
    return moment.isValid ? { is: 'instant', at: instant(moment.toMillis()) } : null;
  }
  const [, year, month, day, hour, minute, second] = LOCAL.exec(text) ?? [];
  if (year === undefined) return null;
  return { is: 'local', year: Number(year), month: Number(month), day: Number(day), hour: Number(hour), minute: Number(minute), second: Number(second ?? 0) };
}

/** Comma or point, `30,5` is `30.5`. Never minus zero. */
const decimal = (text: string): number => Number(text.replace(',', '.')) + 0;
