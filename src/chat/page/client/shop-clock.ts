import type { Phrases } from './phrases.js';
import type { DeskSheet } from './read.js';

const MINUTE = 60_000;
const HOUR = 60;
const DAY = 24 * HOUR;

/** The shop's time as last heard from the server, carried on by this device's own clock; a standing practice clock stands. */
export class ShopClock {
  #shopNow = Date.now();
  #heardAt = performance.now();
  #practice: DeskSheet['practice'] = null;
  #formats = formatsOf('UTC', 'en-GB');

  constructor(readonly phrases: Pick<Phrases, 'say' | 'locale'>) {}

  hear({ now, practice, zone }: Pick<DeskSheet, 'now' | 'practice' | 'zone'>): void {
    this.#shopNow = now;
    this.#heardAt = performance.now();
    this.#practice = practice;
    const { locale } = this.phrases;
    if (zone !== this.#formats.zone || locale !== this.#formats.locale) this.#formats = formatsOf(zone, locale);
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
    if (minutes === 0) return this.phrases.say('moment-now');
    if (minutes >= 2 * DAY) return this.phrases.say(ahead ? 'days-ahead' : 'days-past', { days: Math.floor(minutes / DAY) });
    return this.phrases.say(ahead ? 'ahead' : 'past', { length: this.#length(minutes) });
  }

  #length(minutes: number): string {
    if (minutes < HOUR) return this.phrases.say('minutes', { minutes });
    const [hours, rest] = [Math.floor(minutes / HOUR), minutes % HOUR];
    return rest === 0 ? this.phrases.say('hours', { hours }) : this.phrases.say('hours-and-minutes', { hours, minutes: rest });
  }
}

interface Formats {
  readonly zone: string;
  readonly locale: string;
  readonly time: Intl.DateTimeFormat;
  readonly day: Intl.DateTimeFormat;
  readonly weekday: Intl.DateTimeFormat;
}

const formatsOf = (timeZone: string, locale: string): Formats => ({
  zone: timeZone,
  locale,
  time: new Intl.DateTimeFormat(locale, { timeZone, hour: '2-digit', minute: '2-digit', hourCycle: 'h23' }),
  day: new Intl.DateTimeFormat(locale, { timeZone, weekday: 'short', day: 'numeric', month: 'short' }),
  weekday: new Intl.DateTimeFormat(locale, { timeZone, weekday: 'short' }),
});
