import type { Command } from '../repair/commands.js';
import { interpretLine } from './interpret-line.js';
import type { KnownNames } from './known-names.js';
import { nearWords } from './near-words.js';
import { written } from './draft.js';
import { piecesOf, type Piece } from './pieces.js';
import { readChunks } from './reader.js';
import { asTyped, type Label } from './said.js';
import { isNegation } from './small-words.js';
import type { Parsed, Trouble } from './trouble.js';

/** A line with more slips than this is not put right by anybody but its writer. */
const MOST_SLIPS = 3;
const MOST_LINES = 24;
const TOO_SHORT = 2;

interface Slip {
  readonly at: number;
  readonly word: string;
}

interface Corrected {
  readonly command: Command;
  readonly line: string;
  readonly label: Label;
  /** A word of two letters is one slip away from too much: it is offered only. */
  readonly sure: boolean;
}

/**
 * A line that cannot be read as typed, with its slips put right: taken as meant when exactly one command comes out of the
 * fewest corrections. Several are offered, one button each. Null when there is nothing to put right.
 */
export function correctSlips(text: string, names: KnownNames, trouble: Trouble): Parsed | null {
  const reading = readChunks(text);
  if (!reading.ok) return null;
  const pieces = piecesOf(reading.chunks, names);
  if (pieces.some((piece) => isNegation(piece.text) && !mayStand(piece, pieces))) return null;
  const slips = pieces.flatMap(({ text: word }, at) => {
    const near = nearWords(word, names);
    return near.length === 0 ? [] : [near.map((meant) => ({ at, word: meant }))];
  });
  const asked = reading.asks ? '?' : '';
  for (let count = 1; count <= Math.min(MOST_SLIPS, slips.length); count += 1) {
    const found = read(choices(slips, count).slice(0, MOST_LINES), pieces, names, asked);
    const [only, second] = found;
    if (only !== undefined && second === undefined && only.sure) return { ok: true, command: only.command };
    if (only !== undefined) return { ok: false, trouble: { ...trouble, repairs: () => [...found.map(({ line, label }) => ({ line, label })), ...trouble.repairs()] } };
  }
  return null;
}

/** `no its p2`, `not sure`, `dont know when`: words of a command by themselves, which a slip beside them does not turn round. */
const mayStand = ({ text }: Piece, pieces: readonly Piece[]): boolean => text === 'without' || text === 'menos' || (text === 'no' && pieces.length > 1 && pieces[0]?.text === 'no');

/** All ways to correct so many of the slips. */
function choices(slips: readonly (readonly Slip[])[], count: number): readonly (readonly Slip[])[] {
  if (count === 0) return [[]];
  return slips.flatMap((ways, index) => ways.flatMap((way) => choices(slips.slice(index + 1), count - 1).map((rest) => [way, ...rest])));
}

function read(ways: readonly (readonly Slip[])[], pieces: readonly Piece[], names: KnownNames, asked: string): readonly Corrected[] {
  const found = new Map<string, Corrected>();
  for (const way of ways) {
    const line = `${written({ pieces, names }, new Map(way.map(({ at, word }) => [at, word])))}${asked}`;
    const parsed = interpretLine(line, names);
    const meaning = parsed.ok ? JSON.stringify(parsed.command) : '';
    if (parsed.ok && !found.has(meaning)) found.set(meaning, { command: parsed.command, line, label: asTyped(way.map(({ word }) => word).join(' ')), sure: way.every(({ word }) => word.length > TOO_SHORT || /\d/.test(word)) });
  }
  return [...found.values()];
}
