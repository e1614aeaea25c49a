import type { Day, TimeExpression } from './time-expression.js';
import { timeWord, unitMinutes, WEEKDAYS } from './time-words.js';
import type { TypedClock } from './token.js';
import type { TokenCursor } from './token-cursor.js';

/**
 * `13:40`, `at 13.40`, `since 7`, `~9:20`, `half past 7`, `1:30 pm`, `fri 16:00`, `16:00 yesterday`.
 * A bare number is a clock only after `at`, `since` or before `am`/`pm`, after a word such as `by` too. Null (and the cursor anywhere) when it is none.
 */
export function readClock(cursor: TokenCursor): TimeExpression | null {
  const ready = readBy(cursor);
  const before = readDay(cursor);
  const announced = cursor.takeWord('at', 'since') !== null;
  const day = before ?? readDay(cursor);
  const led = cursor.takeWord('at', 'since') !== null || announced || ready;
  const about = cursor.takeWord('about') !== null;
  const clock = readSpokenClock(cursor) ?? readFigures(cursor, { hour: led, point: led || about || day !== null });
  if (clock === null) return null;
  return { is: 'clock', clock, day: day ?? readDay(cursor) };
}

/** `ready by`. */
function readBy(cursor: TokenCursor): boolean {
  const said = cursor.takeWord('by') !== null;
  return said && (readBy(cursor) || said);
}

function readDay(cursor: TokenCursor): Day | null {
  const word = cursor.takeWord('today', 'yesterday', 'tomorrow', ...WEEKDAYS);
  return word === 'today' || word === 'yesterday' || word === 'tomorrow' ? word : (WEEKDAYS.find((day) => day === word) ?? null);
}

/** `half past 7`, `quarter to 8`. Other languages count halves differently, so this stays a matter of its own. */
function readSpokenClock(cursor: TokenCursor): TypedClock | null {
  const start = cursor.at;
  const part = cursor.takeWord('half', 'quarter');
  const side = part === null ? null : cursor.takeWord('past', 'to');
  const hour = side === null ? null : cursor.take('number');
  if (hour?.whole === true && hour.value <= 24 && !(part === 'half' && side === 'to')) {
    const before = side === 'to';
    const minute = part === 'half' ? 30 : before ? 45 : 15;
    return { hour: before ? (hour.value + 23) % 24 : hour.value, minute, half: readHalf(cursor), padded: false };
  }
  cursor.moveTo(start);
  return null;
}

function readFigures(cursor: TokenCursor, allowed: { readonly hour: boolean; readonly point: boolean }): TypedClock | null {
  const typed = cursor.take('clock');
  if (typed !== null) return { ...typed.clock, half: typed.clock.half ?? readHalf(cursor) };
  const value = cursor.take('number');
  if (value === null || value.marked) return null;
  const half = readHalf(cursor);
  if (value.clock !== null && (allowed.point || half !== null)) return { ...value.clock, half };
  const isHour = value.whole && value.text.length <= 2 && value.value <= 24 && !isLength(cursor);
  return isHour && (allowed.hour || half !== null) ? { hour: value.value, minute: 0, half, padded: value.text.startsWith('0') && value.text.length === 2 } : null;
}

/** `since 20 min` is no time of day. */
function isLength(cursor: TokenCursor): boolean {
  const next = cursor.peek();
  return next?.kind === 'word' && (unitMinutes(next.text) !== null || timeWord(next.text) === 'ago');
}

function readHalf(cursor: TokenCursor): 'am' | 'pm' | null {
  const word = cursor.takeWord('am', 'pm');
  return word === 'am' || word === 'pm' ? word : null;
}
