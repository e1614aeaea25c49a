import type { TimeExpression } from './time-expression.js';
import { unitMinutes } from './time-words.js';
import type { TokenCursor } from './token-cursor.js';

interface Length {
  readonly least: number;
  readonly most: number;
}

const exactly = (minutes: number): Length => ({ least: minutes, most: minutes });

/** `20 min ago`, `20-30 ago`, `since 20 min ago`, `1 h 20 ago`, `half an hour ago`, `ago 20`; null (and the cursor anywhere) when it is none. */
export function readAgo(cursor: TokenCursor): TimeExpression | null {
  cursor.takeWord('since', 'by');
  cursor.takeWord('about');
  const before = cursor.takeWord('ago') !== null;
  if (before) cursor.takeWord('about');
  const length = before ? readOneLength(cursor) : readLength(cursor);
  if (length === null || (!before && cursor.takeWord('ago') === null)) return null;
  return { is: 'ago', ...length };
}

/** After `ago` a second number would more likely be a job: `ago 1 h 501`. */
function readOneLength(cursor: TokenCursor): Length | null {
  return readSpoken(cursor) ?? readRange(cursor) ?? readAmount(cursor);
}

function readLength(cursor: TokenCursor): Length | null {
  const start = cursor.at;
  const hours = readHours(cursor);
  const minutes = hours === null ? null : readAmount(cursor);
  if (hours !== null && minutes !== null) return exactly(hours + minutes.least);
  cursor.moveTo(start);
  return readOneLength(cursor);
}

/** The hours of `1 h 20`. */
function readHours(cursor: TokenCursor): number | null {
  const start = cursor.at;
  const glued = cursor.take('amount');
  if (glued !== null && glued.minutes % 60 === 0) return glued.minutes;
  cursor.moveTo(start);
  const value = cursor.take('number');
  if (value?.whole === true && cursor.takeWord('hour') !== null) return value.value * 60;
  cursor.moveTo(start);
  return null;
}

/** `half an hour`, `an hour`. */
function readSpoken(cursor: TokenCursor): Length | null {
  const start = cursor.at;
  const half = cursor.takeWord('half') !== null;
  const article = cursor.takeWord('an') !== null;
  if ((half || article) && cursor.takeWord('hour') !== null) return exactly(half ? 30 : 60);
  cursor.moveTo(start);
  return null;
}

/** `20-30`, `20 - 30 min`, `20 to 30`. */
function readRange(cursor: TokenCursor): Length | null {
  const start = cursor.at;
  const glued = cursor.take('range');
  if (glued !== null) {
    const each = glued.unitMinutes ?? readUnit(cursor);
    return { least: glued.least * each, most: glued.most * each };
  }
  const one = cursor.take('number');
  const joined = one !== null && cursor.takeWord('to') !== null;
  const other = joined ? (cursor.take('number') ?? cursor.take('amount')) : null;
  if (one?.whole !== true || other === null || (other.kind === 'number' && !other.whole)) {
    cursor.moveTo(start);
    return null;
  }
  const each = readUnit(cursor);
  const ends = [one.value * each, other.kind === 'amount' ? other.minutes : other.value * each];
  return { least: Math.min(...ends), most: Math.max(...ends) };
}

/** `20`, `20 min`, `20min`, `1,5 h`. */
function readAmount(cursor: TokenCursor): Length | null {
  const glued = cursor.take('amount');
  if (glued !== null) return exactly(glued.minutes);
  const value = cursor.take('number');
  if (value === null || value.marked || value.value < 0) return null;
  const unit = cursor.peek();
  if (!value.whole && (unit?.kind !== 'word' || unitMinutes(unit.text) === null)) return null;
  return exactly(Math.round(value.value * readUnit(cursor)));
}

/** Minutes of the unit that follows; without one, minutes are meant. */
function readUnit(cursor: TokenCursor): number {
  const word = cursor.takeWord('minute', 'hour');
  return word === 'hour' ? 60 : 1;
}
