import { JOINT_PATTERN } from '../repair/ids.js';
import type { KnownNames } from './known-names.js';
import { commandWords, phraseWords } from './phrases.js';
import type { Chunk } from './reader.js';
import { shapeOf } from './shapes.js';
import { isHumidityWord, smallWords } from './small-words.js';
import { allTimeWords, timeWord } from './time-words.js';

/** The smallest part of a line that means something: `lamp30` is two pieces. */
export interface Piece {
  /** Lower case. */
  readonly text: string;
  /** As typed; as far as the piece is a part of a chunk, the same as `text`. */
  readonly typed: string;
  /** Which chunk it comes from. */
  readonly chunk: number;
}

const VOCABULARY: ReadonlySet<string> = new Set([...phraseWords, ...allTimeWords(), ...smallWords()]);
const LETTERS_THEN_FIGURES = /^(\p{L}{2,12})([-#\d].*)$/u;
const FIGURES_THEN_LETTERS = /^(#?\d{1,7})(\p{L}.*)$/u;
const PREFIX = /^([~@])(.+)$/;
const LONGEST_GLUED = 30;

export const isVocabulary = (text: string): boolean => VOCABULARY.has(text);
export const vocabulary = (): Iterable<string> => VOCABULARY;

/** Chunks to pieces: missing spaces are put back where only one reading is possible. */
export function piecesOf(chunks: readonly Chunk[], names: KnownNames): readonly Piece[] {
  return chunks.flatMap((chunk, index) => {
    const parts = chunk.text.length > LONGEST_GLUED ? null : unglued(chunk.text, names);
    if (parts === null || parts.length === 1) return [{ text: chunk.text, typed: chunk.typed, chunk: index }];
    return parts.map((text) => ({ text, typed: text, chunk: index }));
  });
}

/** The known parts of a chunk; null when some part of it is not known. */
function unglued(text: string, names: KnownNames): readonly string[] | null {
  if (isKnown(text, names)) return [text];
  const [, sign, after] = PREFIX.exec(text) ?? [];
  if (sign !== undefined && after !== undefined) return joined(sign, unglued(after, names));
  const [, word, figures] = LETTERS_THEN_FIGURES.exec(text) ?? [];
  if (word !== undefined && figures !== undefined && mayStandGlued(word)) return joined(word, unglued(figures, names));
  const [, number, letters] = FIGURES_THEN_LETTERS.exec(text) ?? [];
  if (number !== undefined && letters !== undefined) return joined(number, unglued(letters, names));
  return null;
}

const joined = (first: string, rest: readonly string[] | null): readonly string[] | null => (rest === null ? null : [first, ...rest]);

const isKnown = (text: string, names: KnownNames): boolean =>
  shapeOf(text) !== null || VOCABULARY.has(text) || names.cards.has(text) || names.lamps.has(text) || names.pads.has(text) || JOINT_PATTERN.test(text);

const mayStandGlued = (word: string): boolean => commandWords.has(word) || isHumidityWord(word) || timeWord(word) === 'at' || timeWord(word) === 'since' || timeWord(word) === 'about';
