import { wordsOfAll, type Words } from './language.js';
import type { Token } from './token.js';

export type Weekday = 'mon' | 'tue' | 'wed' | 'thu' | 'fri' | 'sat' | 'sun';
export type TimeWord = 'ago' | 'back' | 'at' | 'since' | 'for' | 'by' | 'about' | 'now' | 'half' | 'quarter' | 'past' | 'to' | 'and' | 'minus' | 'an' | 'hour' | 'minute' | 'oclock' | 'am' | 'pm' | 'today' | 'yesterday' | 'tomorrow' | Weekday;

/** Monday is 1, as in ISO 8601. */
export const WEEKDAYS: readonly Weekday[] = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

/** Words of time. `to` also joins a range: `20 to 30 ago`. */
const TIME_WORDS: readonly (readonly [TimeWord, Words])[] = [
  ['ago', { en: ['ago'], de: ['her'], es: ['atrás'] }],
  /** The same in front of its length: `vor 20 min`. German says quarter to with it too. */
  ['back', { en: [], de: ['vor'], es: ['hace'] }],
  ['at', { en: ['at', '@'], de: ['um'], es: [] }],
  ['since', { en: ['since', 'from'], de: ['ab', 'von'], es: ['desde'] }],
  /** `seit 13:40` is since; `seit 20 min` began 20 minutes ago. */
  ['for', { en: [], de: ['seit'], es: [] }],
  /** Before a moment to come, at which something has to be ready. */
  ['by', { en: ['by', 'ready'], de: ['bis', 'bereit'], es: ['para', 'antes', 'listo', 'lista'] }],
  ['about', { en: ['ca', '~', 'about', 'around', 'circa'], de: ['etwa', 'ungefähr', 'gegen'], es: ['sobre', 'unos', 'aprox'] }],
  ['now', { en: ['now'], de: ['jetzt', 'gerade'], es: ['ahora'] }],
  ['half', { en: ['half'], de: ['halb', 'halbe', 'halben'], es: ['media', 'medio'] }],
  ['quarter', { en: ['quarter'], de: ['viertel'], es: ['cuarto'] }],
  ['past', { en: ['past'], de: ['nach'], es: [] }],
  ['to', { en: ['to', '-'], de: [], es: [] }],
  ['and', { en: [], de: [], es: ['y'] }],
  ['minus', { en: [], de: [], es: ['menos'] }],
  ['an', { en: ['an', 'a'], de: ['eine', 'einer'], es: ['una', 'un'] }],
  ['hour', { en: ['h', 'hr', 'hrs', 'hour', 'hours'], de: ['std', 'stunde', 'stunden'], es: ['hora', 'horas'] }],
  ['minute', { en: ['min', 'm', 'mins', 'minute', 'minutes'], de: ['minuten'], es: ['minuto', 'minutos'] }],
  ['oclock', { en: ['oclock'], de: ['uhr'], es: [] }],
  ['am', { en: ['am'], de: [], es: [] }],
  ['pm', { en: ['pm'], de: [], es: [] }],
  ['today', { en: ['today'], de: ['heute'], es: ['hoy'] }],
  ['yesterday', { en: ['yesterday'], de: ['gestern'], es: ['ayer'] }],
  ['tomorrow', { en: ['tomorrow'], de: ['morgen'], es: ['mañana'] }],
  ['mon', { en: ['mon', 'monday'], de: ['mo', 'montag'], es: ['lun', 'lunes'] }],
  ['tue', { en: ['tue', 'tues', 'tuesday'], de: ['di', 'dienstag'], es: ['mar', 'martes'] }],
  ['wed', { en: ['wed', 'wednesday'], de: ['mi', 'mittwoch'], es: ['mié', 'miércoles'] }],
  ['thu', { en: ['thu', 'thur', 'thurs', 'thursday'], de: ['do', 'donnerstag'], es: ['jue', 'jueves'] }],
  ['fri', { en: ['fri', 'friday'], de: ['fr', 'freitag'], es: ['vie', 'viernes'] }],
  ['sat', { en: ['sat', 'saturday'], de: ['sa', 'samstag', 'sonnabend'], es: ['sáb', 'sábado'] }],
  ['sun', { en: ['sun', 'sunday'], de: ['so', 'sonntag'], es: ['dom', 'domingo'] }],
];

/** The hours as words, one to twelve; `halb acht`, `las siete y media`, `half past seven`. */
const HOURS: Words = {
  en: ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'],
  de: ['eins', 'zwei', 'drei', 'vier', 'fünf', 'sechs', 'sieben', 'acht', 'neun', 'zehn', 'elf', 'zwölf'],
  es: ['una', 'dos', 'tres', 'cuatro', 'cinco', 'seis', 'siete', 'ocho', 'nueve', 'diez', 'once', 'doce'],
};

const BY_TEXT: ReadonlyMap<string, TimeWord> = new Map(TIME_WORDS.flatMap(([meaning, words]) => wordsOfAll(words).map((word) => [word, meaning] as const)));
const HOUR_BY_TEXT: ReadonlyMap<string, number> = new Map(
  Object.values(HOURS).flatMap((words) => words.flatMap((word, index) => wordsOfAll({ en: [], de: [word], es: [] }).map((spelling) => [spelling, index + 1] as const))),
);

export const timeWord = (text: string): TimeWord | null => BY_TEXT.get(text) ?? null;
/** The hour that a word names; null for any other word. */
export const hourNamed = (text: string): number | null => HOUR_BY_TEXT.get(text) ?? null;
export const allTimeWords = (): readonly string[] => [...BY_TEXT.keys(), ...HOUR_BY_TEXT.keys()];

/** `ready`, `by`: what a question for the latest start is about anyway. */
export const isReadyWord = (token: Token): boolean => token.kind === 'word' && timeWord(token.text) === 'by';

/** Minutes in the unit a word names; null for any other word. */
export function unitMinutes(text: string): number | null {
  const meaning = timeWord(text);
  return meaning === 'hour' ? 60 : meaning === 'minute' ? 1 : null;
}
