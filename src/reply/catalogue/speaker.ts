import { IntlMessageFormat } from 'intl-messageformat';
import type { Language } from '../../repair/shop.js';

/** What is put between the words of a phrase: names, figures and times already in the shop's form; counts as numbers. */
export type Values = Readonly<Record<string, string | number>>;

/** The same phrases in every language the shop's people read, each in ICU message syntax with the same placeholders. */
export type Catalogue<Key extends string> = Readonly<Record<Language, Readonly<Record<Key, string>>>>;

/** Whoever reads it; English where nobody said otherwise. */
export interface Reader {
  readonly language?: Language;
}

/** Regional forms of dates and figures that go with a language. */
export const LOCALES: Readonly<Record<Language, string>> = { en: 'en-GB', de: 'de-DE', es: 'es-ES' };

export const languageOf = ({ language }: Reader): Language => language ?? 'en';

export type Say<Key extends string> = (reader: Reader, key: Key, values?: Values) => string;

/**
 * Says the phrases of one catalogue in the reader's language. Each phrase is read once and kept.
 * @throws when a value is missing for one of the phrase's placeholders: that is a fault of the caller, not of the reader.
 */
export function speaker<Key extends string>(catalogue: Catalogue<Key>): Say<Key> {
  const kept = new Map<string, IntlMessageFormat>();
  return (reader, key, values = {}) => {
    const language = languageOf(reader);
    const name = `${language}/${key}`;
    const phrase = kept.get(name) ?? new IntlMessageFormat(catalogue[language][key], LOCALES[language], undefined, { ignoreTag: true });
    kept.set(name, phrase);
    const said = phrase.format<string>({ ...values });
    return Array.isArray(said) ? said.join('') : said;
  };
}
