import { DateTime } from 'luxon';
import type { Clock } from '../clerk/ports.js';
import { earlier, later, plus, type Instant, type Minutes } from '../cure/units.js';
import { ClerkError } from '../errors.js';
import { openPracticeClock } from './practice-clock.js';
import { readPracticeSetting } from './practice-setting.js';
import { openSystemClock } from './system-clock.js';

/** The clock the house runs on: the real one, or a practice clock. */
export interface HouseClock {
  readonly clock: Clock;
  /** Null with real time. */
  readonly practice: { readonly standing: boolean; advance(by: Minutes): void; /** To the next moment at which something is planned, at the latest to `until`; false: there is neither. */ advanceToNext(until: Instant | null): boolean } | null;
  shopTime(): string;
  close(): void;
}

/** What keeps the position of a practice clock, so that it never runs behind the book. */
export interface ClockKeeper {
  latestInstant(): Instant | null;
  saveClock(at: Instant): void;
  timeKept(): 'real' | 'practice' | null;
  keepTime(kind: 'real' | 'practice'): void;
}

/** @throws ClerkError when `setting` (the text of CURECLERK_CLOCK) cannot be read, or the book was kept in the other kind of time. */
export function openHouseClock(setting: string | null, zone: string, keeper: ClockKeeper, onError: (error: unknown) => void): HouseClock {
  noMixing(setting === null ? 'real' : 'practice', keeper);
  if (setting === null) {
    const clock = openSystemClock(onError);
    return houseClock(clock, zone, null);
  }
  const read = readPracticeSetting(setting, zone);
  if (!read.ok) throw new ClerkError({ code: 'settings-refused', problems: [`CURECLERK_CLOCK: ${read.problem}`] });
  const known = keeper.latestInstant();
  const startsAt = known === null ? read.start.startsAt : later(read.start.startsAt, known);
  const clock = openPracticeClock({ ...read.start, startsAt }, onError);
  const moveTo = (at: Instant): void => {
    if (clock.kind !== 'standing') return;
    clock.advanceTo(at);
    keeper.saveClock(clock.now());
  };
  return houseClock(clock, zone, {
    standing: clock.kind === 'standing',
    advance: (by) => { moveTo(plus(clock.now(), by)); },
    advanceToNext: (until) => {
      const planned = clock.kind === 'standing' ? clock.next() : null;
      const next = planned === null || until === null ? (planned ?? until) : earlier(planned, until);
      if (next !== null) moveTo(later(next, clock.now()));
      return next !== null;
    },
  });
}

/** Practice and real cars never stand in one book: the times of the one mean nothing in the other. */
function noMixing(kind: 'real' | 'practice', keeper: ClockKeeper): void {
  const kept = keeper.timeKept();
  if (kept !== null && kept !== kind) throw new ClerkError({ code: 'other-time', kept });
  keeper.keepTime(kind);
}

function houseClock(clock: Clock, zone: string, practice: HouseClock['practice']): HouseClock {
  return { clock, practice, shopTime: () => DateTime.fromMillis(clock.now(), { zone }).toFormat("yyyy-MM-dd'T'HH:mm"), close: () => { clock.close(); } };
}
