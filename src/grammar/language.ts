import { LANGUAGES, type Language } from '../repair/shop.js';

/** The same thing in the words of each language; the first word is the one that is shown. Lower case, no apostrophes. */
export type Words = Readonly<Record<Language, readonly string[]>>;

/** A line may mix languages, because people do: what is read are the words of all of them, in every usual spelling. */
export const wordsOfAll = (words: Words): readonly string[] => [...new Set(LANGUAGES.flatMap((language) => words[language]).flatMap(spellings))];

export const shownWord = (words: Words): string => words.en[0] ?? '';

const UMLAUTS: Readonly<Record<string, string>> = { ä: 'ae', ö: 'oe', ü: 'ue', ß: 'ss' };

/** `härten`, `haerten`, `harten`: a keyboard without the letter finds one of them. */
function spellings(word: string): readonly string[] {
  const apart = word.replace(/[äöüß]/g, (letter) => UMLAUTS[letter] ?? letter);
  return [word, apart, plainLetters(word)];
}

/** Without accents, `ß` as `ss`. */
export const plainLetters = (word: string): string => word.replaceAll('ß', 'ss').normalize('NFD').replace(/\p{M}/gu, '').normalize('NFC');
