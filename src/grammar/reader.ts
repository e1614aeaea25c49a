/** One stretch of a line without spaces. */
export interface Chunk {
  /** As typed, apart from Unicode spellings of the same letter. */
  readonly typed: string;
  /** Lower case, without apostrophes and closing punctuation. */
  readonly text: string;
}

export type Reading = { readonly ok: true; readonly chunks: readonly Chunk[]; readonly asks: boolean } | { readonly ok: false; readonly problem: 'empty' | 'too-long' };

/** A line is a short message; anything longer is a text for people. */
export const LONGEST_LINE = 300;

const INVISIBLE_SPACES = /[\u200b\u2060\ufeff]/g;
const DIRECTION_MARKS = /[\u200e\u200f\u061c]/g;
const DEGREE_SIGNS = /[\u00ba\u02da]/g;
const APOSTROPHES = /[\u2018\u2019\u0060\u00b4\u02bc]/g;
const DASHES = /[\u2010-\u2015\u2212]/g;
const CONTROLS = /[\p{Cc}\p{Cs}]/gu;
const CLOSING = new Set(['.', ',', ';', ':', '!', '?']);

/** Text to chunks: one spelling for spaces, dashes, degree signs and letters. `asks`: a question mark closed some chunk. */
export function readChunks(text: string): Reading {
  if (text.length > LONGEST_LINE) return { ok: false, problem: 'too-long' };
  const typed = plainSpelling(text).split(/\s+/).filter((chunk) => chunk !== '').map(showable);
  const only = typed.join('');
  if (only !== '' && only.replaceAll('?', '') === '') return { ok: true, chunks: [{ typed: '?', text: '?' }], asks: false };
  const chunks = typed.map((chunk) => ({ typed: chunk, text: bare(chunk) })).filter((chunk) => chunk.text !== '');
  if (chunks.length === 0) return { ok: false, problem: 'empty' };
  return { ok: true, chunks, asks: typed.some((chunk) => chunk.slice(withoutClosing(chunk).length).includes('?')) };
}

/** What may be shown of somebody's typing: characters that steer a screen are replaced. */
const showable = (text: string): string => text.replace(CONTROLS, '\u{fffd}');

// The replacements stand before NFKC, which would take some of these signs apart.
const plainSpelling = (text: string): string =>
  text
    .replace(INVISIBLE_SPACES, ' ')
    .replace(DIRECTION_MARKS, '')
    .replace(DEGREE_SIGNS, '°')
    .replace(APOSTROPHES, "'")
    .replace(DASHES, '-')
    .normalize('NFKC');

const bare = (chunk: string): string => withoutClosing(chunk).toLowerCase().replaceAll("'", '');

function withoutClosing(chunk: string): string {
  let end = chunk.length;
  while (end > 0 && CLOSING.has(chunk.charAt(end - 1))) end -= 1;
  return chunk.slice(0, end);
}
