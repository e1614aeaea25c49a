/** Languages the reader knows; a line may mix them, because people do. */
export const LANGUAGES = ['en'] as const;
export type Language = (typeof LANGUAGES)[number];

/** The same thing in the words of each language; the first word is the one that is shown. Lower case, no apostrophes. */
export type Words = Readonly<Record<Language, readonly string[]>>;

export const wordsOfAll = (words: Words): readonly string[] => LANGUAGES.flatMap((language) => words[language]);

export const shownWord = (words: Words): string => words[LANGUAGES[0]][0] ?? '';
