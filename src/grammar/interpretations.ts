import { jointNo, JOINT_PATTERN } from '../repair/ids.js';
import type { KnownNames } from './known-names.js';
import { isHeaterText } from './phrases.js';
import { isVocabulary, type Piece } from './pieces.js';
import { shapeOf } from './shapes.js';
import { isArticle, isCardWord, isFiller } from './small-words.js';
import type { Meaning, Token } from './token.js';

/** More names with two meanings than this in one line are not sorted out. */
const MOST_READINGS = 16;

/**
 * All ways to take the pieces one by one. Most lines have one; a lamp called C makes two of `30 C`.
 * Null when there would be too many.
 */
export function interpretationsOf(pieces: readonly Piece[], names: KnownNames): readonly (readonly Token[])[] | null {
  let readings: readonly (readonly Token[])[] = [[]];
  for (const [index, piece] of pieces.entries()) {
    const meanings = meaningsOf(piece, pieces[index - 1], pieces[index + 1], names);
    readings = readings.flatMap((tokens) => meanings.map((meaning) => [...tokens, { first: index, last: index, text: piece.text, ...meaning }]));
    if (readings.length > MOST_READINGS) return null;
  }
  return readings;
}

function meaningsOf({ text }: Piece, before: Piece | undefined, after: Piece | undefined, names: KnownNames): readonly Meaning[] {
  // `a las 13:40` says a time, though a lamp may be called A; `por favor` says nothing, `por qué` asks why.
  if (text === 'a' && after !== undefined && isArticle(after.text)) return [{ kind: 'word' }];
  if (text === 'por' && after?.text === 'favor') return [{ kind: 'filler' }];
  const card = names.cards.get(text);
  const lamp = names.lamps.get(text);
  const pad = names.pads.get(text);
  const asCard: Meaning[] = card === undefined ? [] : [{ kind: 'card', name: card }];
  const asLamp: Meaning[] = lamp === undefined ? [] : [{ kind: 'lamp', name: lamp, heater: 'lamp' }];
  const asPad: Meaning[] = pad === undefined ? [] : [{ kind: 'lamp', name: pad, heater: 'pad' }];
  if (before !== undefined && isCardWord(before.text) && asCard.length > 0) return asCard;
  // After the word lamp a name is the lamp's: this is how to say which of two is meant.
  if (before !== undefined && isHeaterText(before.text, 'lamp') && asLamp.length > 0 && asCard.length > 0) return asLamp;
  // After the word pad a figure is the pad's number too.
  if (before !== undefined && isHeaterText(before.text, 'pad') && asPad.length > 0) return asPad;
  const all = [...asCard, ...asLamp, ...plainMeanings(text), ...asPad];
  return all.length > 0 ? all : [{ kind: 'unknown' }];
}

/** What a piece means without any name of the shop. */
export function plainMeanings(text: string): readonly Meaning[] {
  if (JOINT_PATTERN.test(text)) return [{ kind: 'joint', joint: jointNo(text) }];
  const shape = shapeOf(text);
  if (shape !== null) return [shape];
  if (isFiller(text)) return [{ kind: 'filler' }];
  return isVocabulary(text) ? [{ kind: 'word' }] : [];
}
