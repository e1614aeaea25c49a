import { minutes, type Minutes } from '../cure/units.js';
import type { Draft } from './draft.js';
import { plainMeanings } from './interpretations.js';
import type { Problem } from './problem.js';
import { readLength } from './read-ago.js';
import type { Label } from './said.js';
import { isFiller } from './small-words.js';
import type { Token } from './token.js';
import { TokenCursor } from './token-cursor.js';

const LONGEST = 12 * 60;

type Said = { readonly ok: true; readonly length: Minutes | null } | { readonly ok: false; readonly problem: Problem; readonly ways: readonly { readonly words: string; readonly label: Label }[] };

/** `30`, `30 min`, `1 h 20`: the whole rest of the line must be one length; null where it is none. */
export function lengthSaid({ pieces }: Draft, from: number): Said {
  const tokens = pieces.slice(from).map((piece, index): Token => ({ first: from + index, last: from + index, text: piece.text, ...(plainMeanings(piece.text)[0] ?? { kind: 'unknown' }) }));
  const cursor = new TokenCursor(tokens.filter((token) => token.kind !== 'word' || !isFiller(token.text)), 0);
  const length = readLength(cursor);
  if (length === null || cursor.peek() !== undefined) return { ok: true, length: null };
  if ('is' in length) return { ok: false, problem: length.problem, ways: length.ways.map(({ words, label }) => ({ words: words.replace(' ago', ''), label })) };
  const one = length.least === length.most && length.least >= 1 && length.least <= LONGEST;
  return { ok: true, length: one ? minutes(length.least) : null };
}
