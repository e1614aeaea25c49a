import type { DeskSheet } from './read.js';

const MINUTE = 60_000;
const HOUR = 60;
const DAY = 24 * HOUR;

/** The shop's time as last heard from the server, carried on by this device's own clock; a standing practice clock stands. */
export class ShopClock {
  #shopNow = Date.now();
  #heardAt = performance.now();
  #practice: DeskSheet['practice'] = null;
  #formats = formatsOf('UTC');

  hear({ now, practice, zone }: Pick<DeskSheet, 'now' | 'practice' | 'zone'>): void {
    this.#shopNow = now;
    this.#heardAt = performance.now();
    this.#practice = practice;
    if (zone !== this.#formats.zone) this.#formats = formatsOf(zone);
  }

  get practice(): boolean {
    return this.#practice !== null;
  }

  now(): number {
    return this.#shopNow + (this.#practice === 'standing' || this.#practice === 'day' ? 0 : performance.now() - this.#heardAt);
  }

  /** `14:05`, on the wall of the shop. */
  time(at: number): string {
    return this.#formats.time.format(at);
  }

  /** `Tue 3 Mar`. */
  day(at: number): string {
    return this.#formats.day.format(at).replace(',', '');
  }

  /** `Wed`; nothing today. */
  weekdayUnlessToday(at: number): string {
    return this.day(at) === this.day(this.now()) ? '' : this.#formats.weekday.format(at);
  }

  /** `in 43 min`, `12 min ago`, `in 2 h 5`. */
  distance(at: number): string {
    const ahead = at > this.now();
    const minutes = ahead ? Math.ceil((at - this.now()) / MINUTE) : Math.floor((this.now() - at) / MINUTE);
    if (minutes === 0) return 'now';
    return ahead ? `in ${inWords(minutes)}` : `${inWords(minutes)} ago`;
  }
}

interface Formats {
  readonly zone: string;
  readonly time: Intl.DateTimeFormat;
  readonly day: Intl.DateTimeFormat;
  readonly weekday: Intl.DateTimeFormat;
}

const formatsOf = (timeZone: string): Formats => ({
  zone: timeZone,
  time: new Intl.DateTimeFormat('en-GB', { timeZone, hour: '2-digit', minute: '2-digit', hourCycle: 'h23' }),
  day: new Intl.DateTimeFormat('en-GB', { timeZone, weekday: 'short', day: 'numeric', month: 'short' }),
  weekday: new Intl.DateTimeFormat('en-GB', { timeZone, weekday: 'short' }),
});

function inWords(minutes: number): string {
  if (minutes < HOUR) return `${minutes} min`;
  if (minutes >= 2 * DAY) return `${Math.floor(minutes / DAY)} days`;
  return `${Math.floor(minutes / HOUR)} h${minutes % HOUR === 0 ? '' : ` ${minutes % HOUR}`}`;
}
