import type { Piece } from './pieces.js';
import { commandWords } from './phrases.js';
import { isNegation } from './small-words.js';

/** `wren stays 501`: somebody else than whoever types it. */
export interface NamedStay {
  /** As typed. */
  readonly who: string;
  readonly rest: string;
}

const STAYS: ReadonlySet<string> = new Set(['stays', 'bleibt', 'queda']);
/** Words that change nothing. */
const FILLING: ReadonlySet<string> = new Set(['se', 'with', 'bei', 'con']);
/** Who stays is nobody in particular, or is asked for. */
const NOT_A_NAME: ReadonlySet<string> = new Set(['who', 'wer', 'quien', 'quién', 'it', 'someone', 'somebody', 'anyone', 'nobody', 'jemand', 'niemand', 'alguien', 'nadie', 'lamp', 'heat', 'car', 'es', 'das', 'er', 'sie', 'he', 'she', 'lampe', 'strahler', 'auto', 'lámpara', 'coche']);

/** Null for every other line. */
export function namedStays(pieces: readonly Piece[]): NamedStay | null {
  const said = pieces.filter((piece, index) => index === 0 || !FILLING.has(piece.text));
  const [name, stays, ...rest] = said;
  if (name === undefined || stays === undefined || !STAYS.has(stays.text)) return null;
  if (!/^[\p{L}<@]/u.test(name.text) || NOT_A_NAME.has(name.text) || commandWords.has(name.text) || pieces.some((piece) => isNegation(piece.text))) return null;
  return { who: name.typed, rest: rest.map((piece) => piece.typed).join(' ') };
}
