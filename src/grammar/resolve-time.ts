import { minus, minutes } from '../cure/units.js';
import { clockText, existing, found, hourOf, isEither, isUnclear, onDay, wrong, type HourMinute, type Resolved } from './clock-of-day.js';
import type { KnownNames } from './known-names.js';
import { dayBefore, isPast, momentsOf, type Span } from './local-time.js';
import { asTyped } from './said.js';
import type { TimeExpression } from './time-expression.js';
import { WEEKDAYS } from './time-words.js';
import type { Stamp } from './token.js';

type ClockExpression = Extract<TimeExpression, { readonly is: 'clock' }>;

const LONGEST_AGO = 7 * 24 * 60;
const HALF_DAY = 12 * 60 * 60_000;

/** A typed time that has come to moments, in the shop's zone. */
export function resolveTime(expression: TimeExpression, names: KnownNames): Resolved {
  switch (expression.is) {
    case 'now':
      return found({ earliest: names.now, latest: names.now });
    case 'ago':
      if (expression.most > LONGEST_AGO) return wrong('last-seven-days', [{ words: 'yesterday 16:00', label: null }]);
      return found({ earliest: minus(names.now, minutes(expression.most)), latest: minus(names.now, minutes(expression.least)) });
    case 'stamp':
      return resolveStamp(expression.stamp, names);
    case 'unsure':
      return wrong(expression.problem, expression.ways);
    case 'clock':
      return resolveClock(expression, names);
  }
}

export function resolveStamp(stamp: Stamp, names: KnownNames): Resolved {
  if (stamp.is === 'instant') return found({ earliest: stamp.at, latest: stamp.at });
  const span = momentsOf(stamp, names);
  return span === null ? wrong('date-that-exists', [{ words: 'yesterday 16:00', label: null }]) : found(span);
}

function resolveClock({ clock, day }: ClockExpression, names: KnownNames): Resolved {
  const hour = hourOf(clock);
  if (hour === null || clock.minute > 59) return wrong('hours-of-day', [{ words: 'at 13:40', label: null }]);
  const typed = { hour, minute: clock.minute };
  if (day === 'tomorrow') return wrong('time-come');
  if (day === null || day === 'today') return isEither(clock) ? nearestHalf(typed, names) : existing(nearestDay(typed, names), typed);
  // Nothing tells 4:30 from 16:30 on another day, and twelve hours too early would be dangerous.
  if (isUnclear(clock)) return wrong('morning-or-afternoon', [hour, hour + 12].map((one) => ({ words: `${day} ${clockText(one, clock.minute)}`, label: asTyped(clockText(one, clock.minute)) })));
  return existing(day === 'yesterday' ? onDay(1, typed, names) : lastWeekday(WEEKDAYS.indexOf(day) + 1, typed, names), typed);
}

/** Today; when that is more than half a day ahead, it was yesterday. */
function nearestDay(typed: HourMinute, names: KnownNames): Span | null {
  const today = onDay(0, typed, names);
  return today !== null && today.earliest - names.now > HALF_DAY ? onDay(1, typed, names) : today;
}

/**
 * The nearest past of the two readings. When today's reading is still to come, it is kept (the desk then asks),
 * unless the other reading lies nearer behind than it lies ahead: `11:50` ten past midnight.
 */
function nearestHalf(typed: HourMinute, names: KnownNames): Resolved {
  const today = onDay(0, typed, names);
  const past = [0, 1]
    .flatMap((days) => [typed.hour, typed.hour + 12].map((hour) => onDay(days, { ...typed, hour }, names)))
    .filter((span) => span !== null)
    .filter((span) => isPast(span.latest, names) && names.now - span.latest <= HALF_DAY);
  const nearest = past.reduce<Span | null>((best, span) => (best === null || span.latest > best.latest ? span : best), null);
  if (nearest === null) return existing(today, typed);
  const ahead = today === null ? Infinity : today.earliest - names.now;
  return today !== null && !isPast(today.earliest, names) && names.now - nearest.latest >= ahead ? found(today) : found(nearest);
}

/** The latest such day on which this time is past. */
function lastWeekday(weekday: number, typed: HourMinute, names: KnownNames): Span | null {
  const back = (dayBefore(names, 0).weekday - weekday + 7) % 7;
  const span = onDay(back, typed, names);
  return back === 0 && span !== null && !isPast(span.earliest, names) ? onDay(7, typed, names) : span;
}
