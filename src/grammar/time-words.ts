import { wordsOfAll, type Words } from './language.js';
import type { Token } from './token.js';

export type Weekday = 'mon' | 'tue' | 'wed' | 'thu' | 'fri' | 'sat' | 'sun';
export type TimeWord = 'ago' | 'at' | 'since' | 'by' | 'about' | 'now' | 'half' | 'quarter' | 'past' | 'to' | 'an' | 'hour' | 'minute' | 'am' | 'pm' | 'today' | 'yesterday' | 'tomorrow' | Weekday;

/** Monday is 1, as in ISO 8601. */
export const WEEKDAYS: readonly Weekday[] = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

/** Words of time. `to` also joins a range: `20 to 30 ago`. */
const TIME_WORDS: readonly (readonly [TimeWord, Words])[] = [
  ['ago', { en: ['ago'] }],
  ['at', { en: ['at', '@'] }],
  ['since', { en: ['since', 'from'] }],
  /** Before a moment to come, at which something has to be ready. */
  ['by', { en: ['by', 'ready'] }],
  ['about', { en: ['ca', '~', 'about', 'around', 'circa'] }],
  ['now', { en: ['now'] }],
  ['half', { en: ['half'] }],
  ['quarter', { en: ['quarter'] }],
  ['past', { en: ['past'] }],
  ['to', { en: ['to', '-'] }],
  ['an', { en: ['an', 'a'] }],
  ['hour', { en: ['h', 'hr', 'hrs', 'hour', 'hours'] }],
  ['minute', { en: ['min', 'm', 'mins', 'minute', 'minutes'] }],
  ['am', { en: ['am'] }],
  ['pm', { en: ['pm'] }],
  ['today', { en: ['today'] }],
  ['yesterday', { en: ['yesterday'] }],
  ['tomorrow', { en: ['tomorrow'] }],
  ['mon', { en: ['mon', 'monday'] }],
  ['tue', { en: ['tue', 'tues', 'tuesday'] }],
  ['wed', { en: ['wed', 'wednesday'] }],
  ['thu', { en: ['thu', 'thur', 'thurs', 'thursday'] }],
  ['fri', { en: ['fri', 'friday'] }],
  ['sat', { en: ['sat', 'saturday'] }],
  ['sun', { en: ['sun', 'sunday'] }],
];

const BY_TEXT: ReadonlyMap<string, TimeWord> = new Map(TIME_WORDS.flatMap(([meaning, words]) => wordsOfAll(words).map((word) => [word, meaning] as const)));

export const timeWord = (text: string): TimeWord | null => BY_TEXT.get(text) ?? null;
export const allTimeWords = (): readonly string[] => [...BY_TEXT.keys()];

/** `ready`, `by`: what a question for the latest start is about anyway. */
export const isReadyWord = (token: Token): boolean => token.kind === 'word' && timeWord(token.text) === 'by';

/** Minutes in the unit a word names; null for any other word. */
export function unitMinutes(text: string): number | null {
  const meaning = timeWord(text);
  return meaning === 'hour' ? 60 : meaning === 'minute' ? 1 : null;
}
