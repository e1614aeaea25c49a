import type { Day, TimeExpression } from './time-expression.js';
import { isArticle } from './small-words.js';
import { timeWord, unitMinutes, WEEKDAYS } from './time-words.js';
import { readSpokenClock } from './spoken-clock.js';
import type { TypedClock } from './token.js';
import type { TokenCursor } from './token-cursor.js';

/**
 * `13:40`, `at 13.40`, `since 7`, `~9:20`, `half past 7`, `1:30 pm`, `fri 16:00`, `16:00 yesterday`, `um 7 uhr`, `a las 13:40`.
 * A bare number is a clock only after `at`, `since`, `a las` or before `am`/`pm`/`uhr`, after a word such as `by` too. Null (and the cursor anywhere) when it is none.
 */
export function readClock(cursor: TokenCursor): TimeExpression | null {
  const ready = readBy(cursor);
  const before = readDay(cursor);
  const announced = readAt(cursor);
  const day = before ?? readDay(cursor);
  const led = readAt(cursor) || announced || ready;
  const about = cursor.takeWord('about') !== null;
  const hour = readAtThe(cursor) || led;
  const clock = readSpokenClock(cursor, hour) ?? readFigures(cursor, { hour, point: hour || about || day !== null });
  if (clock === null) return null;
  return { is: 'clock', clock, day: day ?? readDay(cursor) };
}

const readAt = (cursor: TokenCursor): boolean => cursor.takeWord('at', 'since', 'for') !== null;

/** `a las`, `las`. A bare `a` is an article, or the name of a lamp. */
function readAtThe(cursor: TokenCursor): boolean {
  const start = cursor.at;
  cursor.takeText((text) => text === 'a');
  const one = cursor.peek(1)?.text;
  if (cursor.takeText((text) => isArticle(text) && (text !== 'la' || one === 'una' || one === '1'))) return true;
  cursor.moveTo(start);
  return false;
}

/** `ready by`. */
function readBy(cursor: TokenCursor): boolean {
  const said = cursor.takeWord('by') !== null;
  return said && (readBy(cursor) || said);
}

/** `fri`; German says `am freitag`. */
function readDay(cursor: TokenCursor): Day | null {
  const start = cursor.at;
  cursor.takeWord('am');
  const word = cursor.takeWord('today', 'yesterday', 'tomorrow', ...WEEKDAYS);
  if (word === null) cursor.moveTo(start);
  return word === 'today' || word === 'yesterday' || word === 'tomorrow' ? word : (WEEKDAYS.find((day) => day === word) ?? null);
}

function readFigures(cursor: TokenCursor, allowed: { readonly hour: boolean; readonly point: boolean }): TypedClock | null {
  const typed = cursor.take('clock');
  if (typed !== null) return suffixed(cursor, typed.clock);
  const value = cursor.take('number');
  if (value === null || value.marked) return null;
  const start = cursor.at;
  const named = cursor.takeWord('oclock') !== null;
  const minutes = named ? minutesBehind(cursor) : null;
  if (!named) cursor.moveTo(start);
  const half = readHalf(cursor);
  if (value.clock !== null && (allowed.point || half !== null || named)) return { ...value.clock, half };
  const isHour = value.whole && value.text.length <= 2 && value.value <= 24 && !isLength(cursor);
  return isHour && (allowed.hour || half !== null || named) ? { hour: value.value, minute: minutes ?? 0, half, padded: value.text.startsWith('0') && value.text.length === 2 } : null;
}

/** `7 uhr 30`. */
function minutesBehind(cursor: TokenCursor): number | null {
  const start = cursor.at;
  const value = cursor.take('number');
  if (value?.whole === true && value.text.length === 2 && value.value < 60 && !isLength(cursor)) return value.value;
  cursor.moveTo(start);
  return null;
}

/** `7:30 uhr`, `7:30 pm`. */
function suffixed(cursor: TokenCursor, clock: TypedClock): TypedClock {
  cursor.takeWord('oclock');
  return { ...clock, half: clock.half ?? readHalf(cursor) };
}

/** `since 20 min` is no time of day. */
function isLength(cursor: TokenCursor): boolean {
  const next = cursor.peek();
  return next?.kind === 'word' && (unitMinutes(next.text) !== null || timeWord(next.text) === 'ago');
}

function readHalf(cursor: TokenCursor): 'am' | 'pm' | null {
  const start = cursor.at;
  const word = cursor.takeWord('am', 'pm');
  const next = cursor.peek();
  // `7 uhr am freitag` is no morning.
  if (word === 'am' && next?.kind === 'word' && isGermanDay(next.text)) {
    cursor.moveTo(start);
    return null;
  }
  return word === 'am' || word === 'pm' ? word : null;
}

const isGermanDay = (text: string): boolean => text.endsWith('tag') || text === 'mittwoch' || text === 'sonnabend';
