import { asTyped } from './said.js';
import type { TimeExpression } from './time-expression.js';
import { timeWord, unitMinutes } from './time-words.js';
import type { TokenCursor } from './token-cursor.js';

export interface Length {
  readonly least: number;
  readonly most: number;
}

type Found = Length | Extract<TimeExpression, { readonly is: 'unsure' }> | null;

const exactly = (minutes: number): Length => ({ least: minutes, most: minutes });

/**
 * `20 min ago`, `20-30 ago`, `since 20 min ago`, `1 h 20 ago`, `half an hour ago`, `ago 20`, `vor 20 min`, `hace media hora`, `seit 20 min`;
 * null (and the cursor anywhere) when it is none.
 */
export function readAgo(cursor: TokenCursor): TimeExpression | null {
  cursor.takeWord('since', 'by');
  cursor.takeWord('about');
  const lead = cursor.takeWord('ago', 'back', 'for');
  if (lead !== null) cursor.takeWord('about');
  const start = cursor.at;
  const length = lead === null ? readLength(cursor) : readLengthAfter(cursor, lead === 'ago');
  if (length === null) return null;
  // `vor 8` may as well be before eight: with these words the unit has to be said.
  if ((lead === 'back' || lead === 'for') && !endsWithUnit(cursor, start)) return null;
  if (lead === null && cursor.takeWord('ago') === null) return null;
  return 'is' in length ? length : { is: 'ago', ...length };
}

function endsWithUnit(cursor: TokenCursor, start: number): boolean {
  const last = cursor.at > start ? cursor.peek(-1) : undefined;
  if (last?.kind === 'amount') return true;
  if (last?.kind === 'range') return last.unitMinutes !== null;
  return last?.kind === 'word' ? unitMinutes(last.text) !== null : cursor.at - start > 2;
}

/** After `ago` a second number would more likely be a job: `ago 1 h 501`. */
const readLengthAfter = (cursor: TokenCursor, one: boolean): Found => (one ? readOneLength(cursor) : readLength(cursor, true));

function readOneLength(cursor: TokenCursor): Found {
  return readSpoken(cursor) ?? readRange(cursor) ?? readAmount(cursor);
}

/** The length at the cursor. `unitLast`: `vor 1 std 501` has a job behind it, so the minutes need their unit too. */
export function readLength(cursor: TokenCursor, unitLast = false): Found {
  const start = cursor.at;
  const hours = readHours(cursor);
  const afterHours = cursor.at;
  const minutes = hours === null ? null : readAmount(cursor);
  if (hours !== null && minutes !== null && !('is' in minutes) && minutes.least < 60 && (!unitLast || endsWithUnit(cursor, afterHours))) return exactly(hours + minutes.least);
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

/** `half an hour`, `einer halben stunde`, `an hour`. */
function readSpoken(cursor: TokenCursor): Length | null {
  const start = cursor.at;
  // A bare `a` in front may be the name of a lamp.
  const before = cursor.takeText((text) => text !== 'a' && timeWord(text) === 'an');
  const half = cursor.takeWord('half') !== null;
  const article = cursor.takeWord('an') !== null || before;
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
function readAmount(cursor: TokenCursor): Found {
  const glued = cursor.take('amount');
  if (glued !== null) return glued.written === null ? exactly(glued.minutes) : eitherHours(glued.written);
  const value = cursor.take('number');
  if (value === null || value.marked || value.value < 0) return null;
  const unit = cursor.peek();
  if (!value.whole && (unit?.kind !== 'word' || unitMinutes(unit.text) === null)) return null;
  const each = readUnit(cursor);
  if (value.clock !== null && each === 60) return eitherHours(value.text);
  return exactly(Math.round(value.value * each));
}

/** `1,30 h`: 1.3 hours or 1 hour 30. */
function eitherHours(text: string): Extract<TimeExpression, { readonly is: 'unsure' }> {
  const [hours = '', part = ''] = text.split(/[.,]/);
  const share = Number(`${hours}.${part}`);
  const clock = `${hours}:${part}`;
  return {
    is: 'unsure',
    problem: { is: 'hours-or-clock', hours: share, clock },
    ways: [
      { words: `${Math.round(share * 60)} min ago`, label: [{ is: 'hours', value: share }] },
      { words: `${Number(hours) * 60 + Number(part)} min ago`, label: asTyped(`${clock} h`) },
    ],
  };
}

/** Minutes of the unit that follows; without one, minutes are meant. */
function readUnit(cursor: TokenCursor): number {
  const word = cursor.takeWord('minute', 'hour');
  return word === 'hour' ? 60 : 1;
}
