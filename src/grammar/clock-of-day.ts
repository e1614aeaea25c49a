import type { KnownNames } from './known-names.js';
import { dayBefore, momentsOf, type Span } from './local-time.js';
import type { Problem } from './problem.js';
import type { Label } from './said.js';
import type { TypedClock } from './token.js';

/** Another way to type the time; `label` is null when it is only the nearest form, not a real choice. */
export interface TimeRepair {
  readonly words: string;
  readonly label: Label | null;
}

export type Resolved = { readonly ok: true; readonly span: Span } | { readonly ok: false; readonly problem: Problem; readonly repairs: readonly TimeRepair[] };

export const found = (span: Span): Resolved => ({ ok: true, span });
export const wrong = (problem: Problem, repairs: readonly TimeRepair[] = []): Resolved => ({ ok: false, problem, repairs });

export interface HourMinute {
  readonly hour: number;
  readonly minute: number;
}

/** `1:30` may be 1:30 or 13:30; `01:30`, `1:30 pm` and `13:30` may not. */
export const isEither = ({ hour, half, padded }: TypedClock): boolean => half === null && !padded && hour >= 1 && hour <= 11;

/**
 * Where nobody may guess: on another day, or when a car has to be ready. The 24-hour clock writes 10:30 and 11:30 like this
 * and in no clearer way, so they are taken as they stand.
 */
export const isUnclear = (clock: TypedClock): boolean => isEither(clock) && clock.hour < 10;

/** The hour of the 24-hour clock; null when there is none such. */
export function hourOf({ hour, half }: TypedClock): number | null {
  if (half === null) return hour <= 23 ? hour : null;
  if (hour < 1 || hour > 12) return null;
  return (hour % 12) + (half === 'pm' ? 12 : 0);
}

export const clockText = (hour: number, minute: number): string => `${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;

/** A time of the day that was so many days ago (fewer than none: that is to come). */
export const onDay = (daysAgo: number, { hour, minute }: HourMinute, names: KnownNames): Span | null => momentsOf({ ...dayBefore(names, daysAgo), hour, minute, second: 0 }, names);

export function existing(span: Span | null, typed: HourMinute, lead = 'at'): Resolved {
  if (span !== null) return found(span);
  return wrong('time-that-exists', [{ words: `${lead} ${clockText((typed.hour + 1) % 24, typed.minute)}`, label: null }]);
}
