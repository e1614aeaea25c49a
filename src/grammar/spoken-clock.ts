import type { TypedClock } from './token.js';
import type { TokenCursor } from './token-cursor.js';

/**
 * Times in words. Languages count halves differently: `half past 7` and `las siete y media` are 7:30, `halb acht` is 7:30 too.
 * `hour`: an hour that stands alone is a time (`a las siete`).
 */
export function readSpokenClock(cursor: TokenCursor, hour: boolean): TypedClock | null {
  for (const read of [readPastOrTo, readHalfBefore, readHourAnd, ...(hour ? [readNamedHour] : [])]) {
    const start = cursor.at;
    const clock = read(cursor);
    if (clock !== null) return clock;
    cursor.moveTo(start);
  }
  return null;
}

interface Hour {
  readonly value: number;
  /** `07`, or an hour above twelve: nothing to choose between morning and afternoon. */
  readonly padded: boolean;
}

function readHour(cursor: TokenCursor): Hour | null {
  const named = cursor.takeHourName();
  if (named !== null) return { value: named, padded: false };
  const figure = cursor.take('number');
  return figure?.whole === true && !figure.marked && figure.value <= 24 && figure.text.length <= 2 ? { value: figure.value, padded: figure.text.startsWith('0') && figure.text.length === 2 } : null;
}

/** `half past 7`, `quarter to 8`, `viertel nach 7`, `viertel vor acht`. */
function readPastOrTo(cursor: TokenCursor): TypedClock | null {
  const part = cursor.takeWord('half', 'quarter');
  const side = part === null ? null : cursor.takeWord('past', 'to', 'back');
  const hour = side === null ? null : readHour(cursor);
  if (hour === null || (part === 'half' && side !== 'past')) return null;
  return side === 'past' ? clockAt(cursor, hour, part === 'half' ? 30 : 15) : clockAt(cursor, before(hour), 45);
}

/** `halb acht`: half of the eighth hour is over. English says half seven for half past seven, so only the German word counts. */
function readHalfBefore(cursor: TokenCursor): TypedClock | null {
  const hour = cursor.takeText((text) => text === 'halb') ? readHour(cursor) : null;
  return hour === null ? null : clockAt(cursor, before(hour), 30);
}

/** `7 y media`, `las ocho menos cuarto`. */
function readHourAnd(cursor: TokenCursor): TypedClock | null {
  const hour = readHour(cursor);
  const side = hour === null ? null : cursor.takeWord('and', 'minus');
  const part = side === null ? null : cursor.takeWord('half', 'quarter');
  if (hour === null || part === null || (side === 'minus' && part === 'half')) return null;
  return side === 'minus' ? clockAt(cursor, before(hour), 45) : clockAt(cursor, hour, part === 'half' ? 30 : 15);
}

function readNamedHour(cursor: TokenCursor): TypedClock | null {
  const named = cursor.takeHourName();
  return named === null ? null : clockAt(cursor, { value: named, padded: false }, 0);
}

/** The hour that ends with this one; before one o'clock comes twelve. */
const before = ({ value, padded }: Hour): Hour => (value === 1 && !padded ? { value: 12, padded } : { value: (value + 23) % 24, padded });

function clockAt(cursor: TokenCursor, { value, padded }: Hour, minute: number): TypedClock {
  cursor.takeWord('oclock');
  const half = cursor.takeWord('am', 'pm');
  return { hour: value, minute, half: half === 'am' || half === 'pm' ? half : null, padded };
}
