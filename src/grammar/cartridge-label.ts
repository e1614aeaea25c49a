import type { CartridgeLabel, EnteredFigure } from '../repair/commands.js';
import { readLabelDate } from '../repair/label-date.js';
import { LABEL_FIGURES, type LabelFigure } from '../repair/procedure.js';
import { wordsOfAll, type Words } from './language.js';
import type { Chunk } from './reader.js';

/** Words that name a figure of a cartridge, and are a command by themselves. */
export const LABEL_WORDS: Readonly<Record<LabelFigure, Words>> = {
  batch: { en: ['batch'], de: ['charge'], es: ['lote'] },
  expiry: { en: ['expiry', 'expires', 'exp'], de: ['ablaufdatum', 'verfall', 'haltbar bis'], es: ['caducidad', 'caduca'] },
  opened: { en: ['opened'], de: ['geöffnet', 'angebrochen'], es: ['abierto', 'abierta'] },
};

/** Words that say the same only with a date behind them. */
const BEFORE_A_DATE: Readonly<Record<LabelFigure, Words>> = {
  batch: { en: [], de: [], es: [] },
  expiry: { en: ['use by', 'best before'], de: ['bis', 'haltbar'], es: ['cad', 'vence'] },
  opened: { en: ['open since'], de: ['offen seit', 'geöffnet seit', 'offen'], es: ['abierto desde', 'abierta desde'] },
};

interface Phrase {
  readonly what: LabelFigure;
  readonly words: readonly string[];
  readonly dated: boolean;
}

/** The longest first: `offen seit` before `offen`. */
const PHRASES: readonly Phrase[] = LABEL_FIGURES.flatMap((what) => [
  ...wordsOfAll(LABEL_WORDS[what]).map((text) => ({ what, words: text.split(' '), dated: false })),
  ...wordsOfAll(BEFORE_A_DATE[what]).map((text) => ({ what, words: text.split(' '), dated: true })),
]).sort((one, other) => other.words.length - one.words.length);

/** `batch no 55-B`. */
const NUMBER_WORDS: ReadonlySet<string> = new Set(['no', 'nr', 'number', 'nummer', 'número']);
/** `31 Mar 2027`. */
const LONGEST_DATE = 3;

/** Figures of a cartridge that stand in a line, and what is left without them. */
export interface TakenLabel {
  readonly figures: readonly EnteredFigure[];
  readonly rest: readonly Chunk[];
}

/** Each figure once; what is said of it a second time stays where it is. So does a word without anything behind it, and one that is a name in this shop. */
export function takeLabel(chunks: readonly Chunk[], isName: (text: string) => boolean = () => false): TakenLabel {
  const figures: EnteredFigure[] = [];
  const rest: Chunk[] = [];
  let at = 0;
  for (let chunk = chunks[at]; chunk !== undefined; chunk = chunks[at]) {
    const found = isName(chunk.text) ? null : figureAt(chunks, at);
    const isNew = found !== null && !figures.some(({ what }) => what === found.figure.what);
    if (isNew) figures.push(found.figure);
    else rest.push(chunk);
    at += isNew ? found.length : 1;
  }
  return { figures, rest };
}

/** As a command carries them; null: none. */
export function labelOf(figures: readonly EnteredFigure[]): CartridgeLabel | null {
  const text = (what: LabelFigure): string | null => figures.find((one) => one.what === what)?.text ?? null;
  return figures.length === 0 ? null : { batch: text('batch'), expiry: text('expiry'), opened: text('opened') };
}

interface Found {
  readonly figure: EnteredFigure;
  /** Chunks, its words included. */
  readonly length: number;
}

function figureAt(chunks: readonly Chunk[], at: number): Found | null {
  const phrase = phraseAt(chunks, at);
  if (phrase === null) return null;
  const { what, words, dated } = phrase;
  const from = at + words.length;
  return what === 'batch' ? batchAt(chunks, from, words.length) : dateAt(chunks, from, { what, said: words.length, dated });
}

const phraseAt = (chunks: readonly Chunk[], at: number): Phrase | null => PHRASES.find(({ words }) => words.every((word, index) => chunks[at + index]?.text === word)) ?? null;

function batchAt(chunks: readonly Chunk[], from: number, said: number): Found | null {
  const skipped = NUMBER_WORDS.has(chunks[from]?.text ?? '') ? 1 : 0;
  const value = chunks[from + skipped];
  if (value === undefined || phraseAt(chunks, from + skipped) !== null) return null;
  return { figure: { what: 'batch', text: withoutComma(value.typed) }, length: said + skipped + 1 };
}

function dateAt(chunks: readonly Chunk[], from: number, { what, said, dated }: { readonly what: LabelFigure; readonly said: number; readonly dated: boolean }): Found | null {
  for (let length = LONGEST_DATE; length >= 1; length -= 1) {
    const text = chunks.slice(from, from + length).map(({ typed }) => withoutEnd(typed)).join(' ');
    // Which moments a date spans depends on the zone, whether it is one does not.
    if (from + length <= chunks.length && readLabelDate(text, 'utc') !== null) return { figure: { what, text }, length: said + length };
  }
  const only = chunks[from];
  if (dated || only === undefined || phraseAt(chunks, from) !== null) return null;
  return { figure: { what, text: withoutEnd(only.typed) }, length: said + 1 };
}

const withoutComma = (typed: string): string => typed.replace(/[,;]+$/u, '');
const withoutEnd = (typed: string): string => typed.replace(/[.,;:!?]+$/u, '');
