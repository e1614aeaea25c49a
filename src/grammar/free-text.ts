import type { When } from '../repair/commands.js';
import type { Resolved } from './clock-of-day.js';
import type { Draft } from './draft.js';
import { findTimes, type FoundTime } from './find-time.js';
import { plainMeanings } from './interpretations.js';
import type { Piece } from './pieces.js';
import type { Chunk } from './reader.js';
import { resolveTime } from './resolve-time.js';
import { isConfirmWord } from './small-words.js';
import type { Token } from './token.js';

/** The free end of a line, as typed, and the time that was said before or behind it. */
export type FreeText = { readonly ok: true; readonly words: string; readonly when: When } | { readonly ok: false; readonly time: FoundTime; readonly resolved: Extract<Resolved, { readonly ok: false }> };

/** `timed`: a time at one of its ends is the time, and not a part of the text. */
export function freeText(draft: Draft, chunks: readonly Chunk[], from: number, timed: boolean): FreeText {
  const { now } = draft.names;
  const { pieces } = draft;
  const unstated: When = { earliest: now, latest: now, stated: false, confirmed: false };
  const all = { ok: true, words: typedFrom(pieces, chunks, from, pieces.length), when: unstated } as const;
  const end = confirmedEnd(pieces);
  const time = timed ? (timeAtAnEnd(draft, from, end) ?? timeAtAnEnd(draft, from, pieces.length)) : null;
  if (time === null) return all;
  const resolved = resolveTime(time.expression, draft.names);
  if (!resolved.ok) return { ok: false, time, resolved };
  const [first, last] = [time.tokens[0]?.first ?? from, time.tokens.at(-1)?.last ?? from];
  const confirmed = end < pieces.length && last === end - 1;
  const words = first === from ? typedFrom(pieces, chunks, last + 1, confirmed ? end : pieces.length) : typedFrom(pieces, chunks, from, first);
  return { ok: true, words: confirmed && first === from ? '' : words, when: { ...resolved.span, stated: true, confirmed } };
}

const confirmedEnd = (pieces: readonly Piece[]): number => (isConfirmWord(pieces.at(-1)?.text ?? '') ? pieces.length - 1 : pieces.length);

function timeAtAnEnd({ pieces, names }: Draft, from: number, to: number): FoundTime | null {
  const tokens = pieces.slice(from, to).map((piece, index): Token => ({ first: from + index, last: from + index, text: piece.text, ...(plainMeanings(piece.text)[0] ?? { kind: 'unknown' }) }));
  const { times } = findTimes(tokens, names);
  const [only, second] = times;
  if (only === undefined || second !== undefined || only.by) return null;
  return only.tokens[0]?.first === from || only.tokens.at(-1)?.last === to - 1 ? only : null;
}

/** The chunks from one piece to another as typed; a chunk that was cut in two gives only the part asked for. */
function typedFrom(pieces: readonly Piece[], chunks: readonly Chunk[], from: number, to: number): string {
  const places = [...new Set(pieces.slice(from, to).map((piece) => piece.chunk))];
  return places
    .map((chunk) => {
      const whole = pieces[from - 1]?.chunk !== chunk && pieces[to]?.chunk !== chunk;
      return whole ? (chunks[chunk]?.typed ?? '') : pieces.slice(from, to).filter((piece) => piece.chunk === chunk).map((piece) => piece.typed).join('');
    })
    .join(' ');
}
