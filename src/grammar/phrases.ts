import type { Heater } from '../cure/history.js';
import type { CommandKind } from '../repair/commands.js';
import { COMMAND_TABLE } from './command-table.js';
import { lamp } from './commands/lamp.js';
import { wordsOfAll } from './language.js';
import { isFiller, METHODS, MILESTONES } from './small-words.js';
import type { Meaning, Token } from './token.js';

interface Phrase {
  readonly words: readonly string[];
  readonly meaning: Meaning;
}

/** Fillers are gone when phrases are looked for, so they are left out of the phrases too. */
const phraseOf = (text: string, meaning: Meaning): Phrase => ({ words: text.split(' ').filter((word) => !isFiller(word)), meaning });

const commandPhrases = (command: CommandKind, forms: (typeof COMMAND_TABLE)[number]['forms']): Phrase[] =>
  Object.entries(forms).flatMap(([form, words]) => wordsOfAll(words).map((text) => phraseOf(text, { kind: 'form', command, form })));

const PHRASES: readonly Phrase[] = [
  ...COMMAND_TABLE.flatMap(({ kind, forms }) => commandPhrases(kind, forms)),
  ...METHODS.flatMap(([method, words]) => wordsOfAll(words).map((text) => phraseOf(text, { kind: 'method', method }))),
  ...MILESTONES.flatMap(([milestone, words]) => wordsOfAll(words).map((text) => phraseOf(text, { kind: 'milestone', milestone }))),
];

/** Longest first: `lamp was off` before `lamp`. */
const BY_FIRST_WORD: ReadonlyMap<string, readonly Phrase[]> = new Map(
  PHRASES.map(({ words: [first = ''] }) => [first, PHRASES.filter((phrase) => phrase.words[0] === first).sort((one, other) => other.words.length - one.words.length)] as const),
);

/** Every word of a command, also those of longer phrases. */
export const commandVocabulary = (): readonly string[] => PHRASES.filter(({ meaning }) => meaning.kind === 'form').flatMap(({ words }) => words);
export const phraseWords: ReadonlySet<string> = new Set(PHRASES.flatMap(({ words }) => words));
/** Words that are a command by themselves and may stand glued to a number: `lamp30`. */
export const commandWords: ReadonlySet<string> = new Set(PHRASES.filter(({ words, meaning }) => words.length === 1 && meaning.kind === 'form').flatMap(({ words }) => words));

/** Words after which a name is a lamp's, or a pad's. */
export const isHeaterText = (text: string, heater: Heater): boolean => heaterTexts[heater].has(text);
const heaterTexts: Readonly<Record<Heater, ReadonlySet<string>>> = { lamp: new Set(wordsOfAll(lamp.forms.lamp)), pad: new Set(wordsOfAll(lamp.forms.pad)) };

/** Words to what they say; words that belong to no phrase stay words. */
export function matchPhrases(tokens: readonly Token[]): readonly Token[] {
  const matched: Token[] = [];
  let at = 0;
  while (at < tokens.length) {
    const found = longestAt(tokens, at);
    const [first, last] = [tokens[at], tokens[at + (found?.words.length ?? 1) - 1]];
    if (first !== undefined && last !== undefined) matched.push(found === null ? first : { first: first.first, last: last.last, text: found.words.join(' '), ...found.meaning });
    at += found?.words.length ?? 1;
  }
  return matched;
}

function longestAt(tokens: readonly Token[], at: number): Phrase | null {
  const first = tokens[at];
  if (first === undefined || !mayBeWord(first)) return null;
  const phrases = BY_FIRST_WORD.get(first.text) ?? [];
  return phrases.find((phrase) => phrase.words.every((word, index) => says(tokens[at + index], word))) ?? null;
}

const says = (token: Token | undefined, word: string): boolean => token !== undefined && mayBeWord(token) && token.text === word;

/** `2 sheets`: a figure may belong to a phrase. */
const mayBeWord = ({ kind }: Token): boolean => kind === 'word' || kind === 'number';
