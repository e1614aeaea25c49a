import { instant, minus, minutes, plus, type Instant } from '../cure/units.js';
import { clockText, existing, found, hourOf, isEither, isUnclear, onDay, wrong, type HourMinute, type Resolved } from './clock-of-day.js';
import type { KnownNames } from './known-names.js';
import { dayBefore, type Span } from './local-time.js';
import { resolveStamp } from './resolve-time.js';
import { asTyped } from './said.js';
import type { TimeExpression } from './time-expression.js';
import { WEEKDAYS } from './time-words.js';

/** `from`: something is supposed from then on, also from now or from minutes ago. `ready`: only what is to come. */
export type Ahead = 'from' | 'ready';
type ClockExpression = Extract<TimeExpression, { readonly is: 'clock' }>;

/** The minute that runs counts as still to come. */
const THIS_MINUTE = minutes(1);
const NEAREST: Readonly<Record<Ahead, string>> = { from: 'from now', ready: 'ready fri 16:00' };

/** A typed time that is still to come: the nearest moment ahead that fits, in the shop's zone. */
export function resolveAhead(expression: TimeExpression, ahead: Ahead, names: KnownNames): Resolved {
  switch (expression.is) {
    case 'now':
      return ahead === 'from' ? found({ earliest: names.now, latest: names.now }) : notAhead(ahead);
    case 'ago': {
      const at = minus(names.now, minutes(expression.least));
      return ahead === 'from' ? found({ earliest: at, latest: at }) : notAhead(ahead);
    }
    case 'stamp':
      return resolveStamp(expression.stamp, names);
    case 'unsure':
      return wrong(expression.problem, expression.ways);
    case 'clock':
      return resolveClock(expression, ahead, names);
  }
}

const notAhead = (ahead: Ahead): Resolved => wrong('time-ahead', [{ words: NEAREST[ahead], label: null }]);

function resolveClock({ clock, day }: ClockExpression, ahead: Ahead, names: KnownNames): Resolved {
  const hour = hourOf(clock);
  if (hour === null || clock.minute > 59) return wrong('hours-of-day', [{ words: `${ahead} 16:00`, label: null }]);
  const typed = { hour, minute: clock.minute };
  if (day === null && ahead === 'from' ? isEither(clock) : isUnclear(clock)) {
    // When a car has to be ready nobody guesses; what is only supposed from 2:30 on is said back in the answer.
    const hours = [hour, hour + 12];
    if (day === null && ahead === 'from') return nearestOf(hours.map((one) => ({ ...typed, hour: one })), names);
    return wrong('morning-or-afternoon', hours.map((one) => ({ words: [ahead, ...(day === null ? [] : [day]), clockText(one, clock.minute)].join(' '), label: asTyped(clockText(one, clock.minute)) })));
  }
  switch (day) {
    case null:
      return existing(nextOf([0, 1], typed, names), typed, ahead);
    case 'today': {
      const span = onDay(0, typed, names);
      return span !== null && !isAhead(span.latest, names) ? notAhead(ahead) : existing(span, typed, ahead);
    }
    case 'yesterday':
      return notAhead(ahead);
    case 'tomorrow':
      return existing(onDay(-1, typed, names), typed, `${ahead} tomorrow`);
    default: {
      const days = (WEEKDAYS.indexOf(day) + 1 - dayBefore(names, 0).weekday + 7) % 7;
      return existing(nextOf([days, days + 7], typed, names), typed, `${ahead} ${day}`);
    }
  }
}

/** The first of some days on which this time is still to come; a day on which the clocks go over it is that day still. */
function nextOf(days: readonly number[], typed: HourMinute, names: KnownNames): Span | null {
  for (const day of days) {
    const span = onDay(-day, typed, names);
    if (span === null || isAhead(span.latest, names)) return span;
  }
  return null;
}

function nearestOf(times: readonly HourMinute[], names: KnownNames): Resolved {
  const spans = [0, 1].flatMap((days) => times.map((typed) => onDay(-days, typed, names))).filter((span) => span !== null && isAhead(span.latest, names));
  const [first] = spans.filter((span) => span !== null).sort((one, other) => one.earliest - other.earliest);
  return first === undefined ? notAhead('from') : found(first);
}

const isAhead = (at: Instant, { now }: KnownNames): boolean => plus(at, THIS_MINUTE) > now;

/** One moment of a stretch, on the side that errs late: heat from its end on, ready by its beginning. */
export const momentOf = ({ earliest, latest }: Span, ahead: Ahead): Instant => instant(ahead === 'from' ? latest : earliest);
