import { knownNames } from './known-names.js';
import { matchPhrases } from './phrases.js';
import { piecesOf } from './pieces.js';
import { readChunks } from './reader.js';
import { readLine } from './read-line.js';
import type { ReadingContext } from './reading.js';
import { isCardWord, isFiller } from './small-words.js';

/** Whether a line holds a command word of its own, so that no word has to be put in front of it. In `501 card P1` it only names the card. */
export function saysCommand(text: string, context: ReadingContext): boolean {
  const reading = readChunks(text);
  if (!reading.ok) return false;
  const names = knownNames(context);
  const pieces = piecesOf(reading.chunks, names).filter((piece) => !isFiller(piece.text));
  const words = pieces.filter((piece, index) => !(isCardWord(piece.text) && names.cards.has(pieces[index + 1]?.text ?? '')));
  const said = matchPhrases(words.map((piece, index) => ({ kind: 'word', first: index, last: index, text: piece.text }))).some((token) => token.kind === 'form');
  const named = pieces.length === words.length;
  // `bo takes all`, `lmp 501 35`: said in another way, or with a slip.
  return said || (named && readLine(text, context).ok);
}
