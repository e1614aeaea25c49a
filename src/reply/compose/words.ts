import { DateTime } from 'luxon';
import type { MilestoneKind } from '../../cure/card.js';
import { minutesBetween, type Celsius, type Instant } from '../../cure/units.js';
import type { Shop } from '../../repair/shop.js';
import type { Answer, Button, Line, Span, Tone } from '../answer.js';
import { sayTerm } from '../catalogue/terms.js';
import { languageOf, LOCALES, type Reader } from '../catalogue/speaker.js';

/** What every composer needs to put moments and temperatures into the shop's words. */
export interface Setting extends Reader {
  readonly shop: Shop;
  readonly now: Instant;
  /** The reader's own, where it is not the shop's: both are said. */
  readonly unit?: Shop['unit'];
  /** Today's times with their day too: other days stand beside them. */
  readonly withDays?: boolean;
}

export const text = (words: string): Span => ({ kind: 'text', text: words });
export const strong = (words: string): Span => ({ kind: 'strong', text: words });

/** `**…**` marks what to see first; keeps the sentences below readable as sentences. */
export function line(sentence: string): Line {
  return sentence
    .split('**')
    .map((part, index) => (index % 2 === 1 ? strong(part) : text(part)))
    .filter((span) => span.text !== '');
}

export function answer(tone: Tone, sentences: readonly (string | null)[], buttons: readonly Button[] = []): Answer {
  return { tone, lines: sentences.flatMap((sentence) => (sentence === null ? [] : [line(sentence)])), buttons };
}

/** Shop time: `12:03` today, `Sun 16:00` within a week, `Sun 8 Mar 16:00` beyond. */
export function clock(at: Instant, setting: Setting): string {
  const { shop, now } = setting;
  const moment = DateTime.fromMillis(at, { zone: shop.zone, locale: LOCALES[languageOf(setting)] });
  const said = clockOf(moment, setting);
  // The clocks change on the way there: which of the two times it is.
  return at > now && moment.offset !== DateTime.fromMillis(now, { zone: shop.zone }).offset ? sayTerm(setting, 'new-time', { at: said }) : said;
}

function clockOf(moment: DateTime, { shop, now, withDays = false }: Setting): string {
  const today = DateTime.fromMillis(now, { zone: shop.zone }).startOf('day');
  const days = moment.startOf('day').diff(today, 'days').days;
  if (days === 0 && !withDays) return moment.toFormat('HH:mm');
  return moment.toFormat(Math.abs(days) < 7 ? 'ccc HH:mm' : 'ccc d LLL HH:mm');
}

export function degrees(value: Celsius, setting: Setting): string {
  const said = (unit: Shop['unit']): string => `${tidy(unit === 'F' ? (value * 9) / 5 + 32 : value, setting)} °${unit}`;
  const { shop, unit = shop.unit } = setting;
  return unit === shop.unit ? said(unit) : `${said(unit)} (${said(shop.unit)})`;
}

/** A figure with at most one decimal, its sign for decimals as the reader writes it. */
export function tidy(value: number, reader: Reader = {}): string {
  const plain = `${Math.round(value * 10) / 10}`;
  return languageOf(reader) === 'en' ? plain : plain.replace('.', ',');
}

export const percent = (share: number, reader: Reader = {}): string => sayTerm(reader, 'share', { percent: `${Math.floor(share * 100 + 1e-9)}` });

/** `25 min`, `2 h 10`, `3 days`. */
export function lasting(from: Instant, to: Instant, reader: Reader = {}): string {
  const total = Math.max(0, Math.round(minutesBetween(from, to)));
  const [hours, minutes] = [`${Math.floor(total / 60)}`, `${total % 60}`];
  if (total < 60) return sayTerm(reader, 'minutes', { minutes });
  if (total >= 48 * 60) return sayTerm(reader, 'days', { days: Math.round(total / 1440) });
  return total % 60 === 0 ? sayTerm(reader, 'hours', { hours }) : sayTerm(reader, 'hours-and-minutes', { hours, minutes });
}

export const milestoneWord = (kind: MilestoneKind, reader: Reader): string => sayTerm(reader, `milestone-${kind}`);

export const button = (label: string, sent: string): Button => ({ label, line: sent });

export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
