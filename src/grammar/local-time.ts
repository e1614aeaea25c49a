import { DateTime } from 'luxon';
import { instant, minus, minutes, type Instant } from '../cure/units.js';
import type { KnownNames } from './known-names.js';

/** A stretch in which something happened; both ends are the same when the moment is known. */
export interface Span {
  readonly earliest: Instant;
  readonly latest: Instant;
}

export interface LocalMoment {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
}

/** Clocks of phones and shop PCs differ a little: a minute ahead is not the future. */
const CLOCK_SLACK = minutes(1);

export const isPast = (at: Instant, { now }: KnownNames): boolean => minus(at, CLOCK_SLACK) <= now;

/** What local day it was so many days ago. */
export function dayBefore(names: KnownNames, days: number): Pick<LocalMoment, 'year' | 'month' | 'day'> & { readonly weekday: number } {
  const { year, month, day, weekday } = DateTime.fromMillis(names.now, { zone: names.zone }).minus({ days });
  return { year, month, day, weekday };
}

/**
 * When this local time was. Null when the clocks went over it; two ends when the clocks went back and
 * it came twice (what has not come yet is left out, if one of the two has).
 */
export function momentsOf({ year, month, day, hour, minute, second }: LocalMoment, names: KnownNames): Span | null {
  const moment = DateTime.fromObject({ year, month, day, hour, minute, second }, { zone: names.zone });
  if (moment.hour !== hour || moment.minute !== minute) return null;
  const all = moment.getPossibleOffsets().map((one) => instant(one.toMillis()));
  const past = all.filter((at) => isPast(at, names));
  const counted = past.length > 0 ? past : all;
  return { earliest: instant(Math.min(...counted)), latest: instant(Math.max(...counted)) };
}
