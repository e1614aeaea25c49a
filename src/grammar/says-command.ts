import { knownNames } from './known-names.js';
import { matchPhrases } from './phrases.js';
import { piecesOf } from './pieces.js';
import { readChunks } from './reader.js';
import type { ReadingContext } from './reading.js';
import { isCardWord, isFiller } from './small-words.js';

/** Whether a line holds a command word of its own, so that no word has to be put in front of it. In `501 card P1` it only names the card. */
export function saysCommand(text: string, context: ReadingContext): boolean {
  const reading = readChunks(text);
  if (!reading.ok) return false;
  const names = knownNames(context);
  const pieces = piecesOf(reading.chunks, names).filter((piece) => !isFiller(piece.text));
  const words = pieces.filter((piece, index) => !(isCardWord(piece.text) && names.cards.has(pieces[index + 1]?.text ?? '')));
  return matchPhrases(words.map((piece, index) => ({ kind: 'word', first: index, last: index, text: piece.text }))).some((token) => token.kind === 'form');
}
