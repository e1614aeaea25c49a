import { DateTime } from 'luxon';
import type { Clock } from '../clerk/ports.js';
import { later, plus, type Instant, type Minutes } from '../cure/units.js';
import { ClerkError } from '../errors.js';
import { openPracticeClock } from './practice-clock.js';
import { readPracticeSetting } from './practice-setting.js';
import { openSystemClock } from './system-clock.js';

/** The clock the house runs on: the real one, or a practice clock. */
export interface HouseClock {
  readonly clock: Clock;
  /** Null with real time. */
  readonly practice: { readonly standing: boolean; advance(by: Minutes): void } | null;
  shopTime(): string;
  close(): void;
}

/** What keeps the position of a practice clock, so that it never runs behind the book. */
export interface ClockKeeper {
  latestInstant(): Instant | null;
  saveClock(at: Instant): void;
}

/** @throws ClerkError when `setting` (the text of CURECLERK_CLOCK) cannot be read. */
export function openHouseClock(setting: string | null, zone: string, keeper: ClockKeeper, onError: (error: unknown) => void): HouseClock {
  if (setting === null) {
    const clock = openSystemClock(onError);
    return houseClock(clock, zone, null);
  }
  const read = readPracticeSetting(setting, zone);
  if (!read.ok) throw new ClerkError({ code: 'settings-refused', problems: [`CURECLERK_CLOCK: ${read.problem}`] });
  const known = keeper.latestInstant();
  const startsAt = known === null ? read.start.startsAt : later(read.start.startsAt, known);
  const clock = openPracticeClock({ ...read.start, startsAt }, onError);
  return houseClock(clock, zone, {
    standing: clock.kind === 'standing',
    advance: (by) => {
      if (clock.kind !== 'standing') return;
      clock.advanceTo(plus(clock.now(), by));
      keeper.saveClock(clock.now());
    },
  });
}

function houseClock(clock: Clock, zone: string, practice: HouseClock['practice']): HouseClock {
  return { clock, practice, shopTime: () => DateTime.fromMillis(clock.now(), { zone }).toFormat("yyyy-MM-dd'T'HH:mm"), close: () => { clock.close(); } };
}
