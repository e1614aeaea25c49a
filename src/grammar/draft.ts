import type { KnownNames } from './known-names.js';
import { isVocabulary, type Piece } from './pieces.js';
import { shapeOf } from './shapes.js';
import type { Token } from './token.js';

/** A line as it was typed, for writing changed copies of it. */
export interface Draft {
  readonly pieces: readonly Piece[];
  readonly names: KnownNames;
}

type Change = ReadonlyMap<number, string>;
type Place = Pick<Token, 'first' | 'last'>;

const NO_CHANGE: Change = new Map();

/** Known words in the spelling of the house, everything else as typed. */
function shown({ text, typed }: Piece, { cards, lamps, pads }: KnownNames): string {
  const name = cards.get(text) ?? lamps.get(text) ?? pads.get(text);
  if (name !== undefined) return name;
  return isVocabulary(text) || shapeOf(text) !== null ? text : typed;
}

/** The line with some pieces replaced (by nothing, when the new words are empty). */
export function written({ pieces, names }: Draft, change: Change = NO_CHANGE, from = 0, to = pieces.length): string {
  const words = pieces.slice(from, to).map((piece, index) => change.get(from + index) ?? shown(piece, names));
  return words.filter((word) => word !== '').join(' ');
}

/** The change that puts words where some tokens stood. */
export function replacing(place: Place, words: string): Change {
  const change = new Map<number, string>();
  for (let index = place.first; index <= place.last; index += 1) change.set(index, index === place.first ? words : '');
  return change;
}

export const replaced = (draft: Draft, place: Place, words: string): string => written(draft, replacing(place, words));

export const without = (draft: Draft, places: readonly Place[]): string => written(draft, new Map(places.flatMap((place) => [...replacing(place, '')])));

export const inserted = (draft: Draft, before: number, words: string): string => [written(draft, NO_CHANGE, 0, before), words, written(draft, NO_CHANGE, before)].filter((part) => part !== '').join(' ');

export const appended = (draft: Draft, words: string): string => `${written(draft)} ${words}`;

/** What was typed at some places, to be shown as the unclear part. */
export const typedAt = ({ pieces }: Draft, places: readonly Place[]): string => places.map(({ first, last }) => pieces.slice(first, last + 1).map((piece) => piece.typed).join(' ')).join(' ');
