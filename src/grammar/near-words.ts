import { isEverydayWord } from './everyday-words.js';
import type { KnownNames } from './known-names.js';
import { commandVocabulary } from './phrases.js';
import { isVocabulary } from './pieces.js';
import { askingWords } from './asking-words.js';
import { shapeOf } from './shapes.js';
import { exceptTexts, isNegation, isUnitWord } from './small-words.js';
import { isOneSlip } from './spelling.js';
import { timeWord } from './time-words.js';

const SHORT = 3;
const LONGEST = 16;
const NO_NAMES: Pick<KnownNames, 'cards' | 'lamps' | 'pads'> = { cards: new Map(), lamps: new Map(), pads: new Map() };

/** Words a slip can be corrected to: those of commands and of lamps, no units, no times, no figures. */
const WORDS: readonly string[] = [...new Set([...commandVocabulary(), ...askingWords(), ...exceptTexts()])].filter(
  (word) => word.length > 1 && /^\p{L}+$/u.test(word) && timeWord(word) === null && !isUnitWord(word) && !(isNegation(word) && !exceptTexts().includes(word)),
);

/**
 * Words and names that a word nobody knows is one slip away from. Short words need their first letter; figures are never
 * changed; a word that means something else by itself is no slip.
 */
export function nearWords(text: string, { cards, lamps, pads }: Pick<KnownNames, 'cards' | 'lamps' | 'pads'> = NO_NAMES): readonly string[] {
  if (text.length < 2 || text.length > LONGEST || !/^\p{L}[\p{L}\d]*$/u.test(text)) return [];
  if (isVocabulary(text) || isEverydayWord(text) || isNegation(text) || shapeOf(text) !== null || cards.has(text) || lamps.has(text) || pads.has(text)) return [];
  const names = [...cards, ...lamps, ...pads].filter(([name]) => mayBe(text, name)).map(([, spelled]) => spelled);
  // A word broken off is likelier than another letter: `of` is rather `off` than `on`.
  const begun = (word: string): number => (word.startsWith(text) ? 0 : 1);
  return [...new Set([...WORDS.filter((word) => mayBe(text, word)), ...names])].sort((one, other) => begun(one) - begun(other));
}

function mayBe(text: string, word: string): boolean {
  if (word.length < 2 || figuresOf(text) !== figuresOf(word)) return false;
  if (Math.min(text.length, word.length) <= SHORT && text[0] !== word[0]) return false;
  return isOneSlip(text, word);
}

const figuresOf = (text: string): string => text.replace(/\D/g, '');
