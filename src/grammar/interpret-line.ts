import { HEATERS } from '../cure/history.js';
import type { Command } from '../repair/commands.js';
import { COMMANDS, shownWords } from './command-table.js';
import { written, type Draft } from './draft.js';
import { interpretationsOf } from './interpretations.js';
import { jobFromItsEnd } from './job-from-its-end.js';
import type { KnownNames } from './known-names.js';
import { parseTokens } from './parse-tokens.js';
import { isHeaterText } from './phrases.js';
import { piecesOf } from './pieces.js';
import type { Problem } from './problem.js';
import { LONGEST_LINE, readChunks, type Chunk } from './reader.js';
import { beginsFreeText, parseReasonLine } from './reason-line.js';
import { labelledLine, withLabel } from './labelled-line.js';
import { namedStays, type NamedStay } from './named-stays.js';
import { isStatement, restate } from './restate.js';
import type { Said } from './said.js';
import { isUnitWord } from './small-words.js';
import type { Token } from './token.js';
import type { Parsed, Repair, Trouble } from './trouble.js';

interface Candidate {
  readonly command: Command;
  readonly tokens: readonly Token[];
}

/**
 * A line to a command, or to what is wrong with it; the suggestions in it are not checked yet. Words are taken as typed:
 * slips are the matter of `readLine`.
 */
export function interpretLine(text: string, names: KnownNames): Parsed {
  const reading = readChunks(text);
  if (!reading.ok) return { ok: false, trouble: unreadable(reading.problem === 'empty' ? 'a-command' : { is: 'longest-line', most: LONGEST_LINE }) };
  const pieces = piecesOf(reading.chunks, names);
  const laid = reading.asks || beginsFreeText(pieces) ? null : labelledLine(reading.chunks, names);
  const labelled = laid === null ? null : withLabel(interpretLine(laid.rest, names), laid.label);
  if (labelled !== null) return labelled;
  const staying = reading.asks ? null : namedStays(pieces);
  if (staying !== null) return stayOf(staying, names);
  const plain = restate(pieces, reading.asks, beginsFreeText(pieces));
  if (plain === null && reading.asks && isStatement(pieces)) return { ok: false, trouble: question() };
  const again = plain === null ? null : readChunks(plain);
  if (again?.ok === true) return interpretChunks(again.chunks, names, false);
  return interpretChunks(reading.chunks, names, reading.asks);
}

/** The same line as if its speaker stayed, and then whoever is named in it. */
function stayOf({ who, rest }: NamedStay, names: KnownNames): Parsed {
  const parsed = interpretLine(`stay ${rest}`.trim(), names);
  if (!parsed.ok) return { ok: false, trouble: { ...parsed.trouble, repairs: () => parsed.trouble.repairs().map((one) => ({ ...one, line: one.line.replace(/^stay\b/u, `${who} stays`) })) } };
  return parsed.command.kind === 'stay' ? { ok: true, command: { ...parsed.command, who } } : parsed;
}

function interpretChunks(chunks: readonly Chunk[], names: KnownNames, asks: boolean): Parsed {
  const draft: Draft = { pieces: piecesOf(chunks, names), names };
  const parsed = parseReasonLine(chunks, draft, asks) ?? parseWords(draft, asks);
  return parsed.ok ? jobFromItsEnd(parsed.command, draft) : parsed;
}

function parseWords(draft: Draft, asks: boolean): Parsed {
  const interpretations = interpretationsOf(draft.pieces, draft.names);
  if (interpretations === null) return { ok: false, trouble: unreadable('fewer-names') };
  return settled(interpretations, draft, asks);
}

/** Exactly one command must come out; names that fit two ways are asked about. */
function settled(interpretations: readonly (readonly Token[])[], draft: Draft, asks: boolean): Parsed {
  const candidates = new Map<string, Candidate>();
  let trouble: Trouble | null = null;
  for (const tokens of interpretations) {
    const parsed = parseTokens(tokens, draft, asks);
    if (parsed.ok) candidates.set(JSON.stringify(parsed.command), { command: parsed.command, tokens });
    else trouble ??= parsed.trouble;
  }
  const [only, second] = candidates.values();
  if (only !== undefined && second === undefined) return { ok: true, command: only.command };
  if (only !== undefined) return { ok: false, trouble: twoMeanings([...candidates.values()], interpretations, draft) };
  return { ok: false, trouble: trouble ?? unreadable('a-command') };
}

function twoMeanings(candidates: readonly Candidate[], interpretations: readonly (readonly Token[])[], draft: Draft): Trouble {
  const unsure = draft.pieces.map((piece, index) => ({ piece, index })).filter(({ index }) => new Set(interpretations.map((tokens) => tokens[index]?.kind)).size > 1);
  const kinds = new Set(candidates.map(({ command }) => command.kind));
  const [first] = kinds;
  const places = unsure.map(({ index }) => index);
  return {
    understood: kinds.size === 1 && first !== undefined ? [{ is: 'command', word: shownWords(COMMANDS[first]) }] : [],
    unclear: unsure.map(({ piece }) => piece.typed).join(' '),
    problem: 'which-of-two',
    command: first ?? null,
    job: null,
    repairs: () => candidates.map((candidate) => spelledOut(candidate, places, draft)),
  };
}

/** The same line with every doubtful name said in full: `card K`, `lamp C`, `pad 1`, `#1`, `30C`. */
function spelledOut({ tokens, command }: Candidate, places: readonly number[], draft: Draft): Repair {
  const change = new Map<number, string>();
  const label: Said[] = [];
  for (const place of places) {
    const { at, words, length, said } = inFull(tokens, place, command);
    for (let index = at; index < at + length; index += 1) change.set(index, index === at ? words : '');
    label.push(said ?? { is: 'typed', text: words });
  }
  return { line: written(draft, change), label };
}

/** What to write, and over which pieces. */
function inFull(tokens: readonly Token[], place: number, command: Command): { at: number; length: number; words: string; said?: Said } {
  const token = tokens[place];
  const before = tokens[place - 1];
  if (token?.kind === 'card') return { at: place, length: 1, words: `card ${token.name}`, said: { is: 'card', card: token.name } };
  if (token?.kind === 'lamp' && (before === undefined || !isHeaterText(before.text, token.heater))) {
    const named = before !== undefined && HEATERS.some((heater) => isHeaterText(before.text, heater));
    return { at: named ? place - 1 : place, length: named ? 2 : 1, words: `${token.heater} ${token.name}`, said: { is: 'heater', heater: token.heater, name: token.name } };
  }
  if (token?.kind === 'number' && token.whole) return { at: place, length: 1, words: 'job' in command && command.job === token.text ? `#${token.text}` : `${token.text}°` };
  if (token?.kind === 'filler') return { at: place, length: 1, words: '', said: { is: 'without', word: token.text } };
  if (token?.kind === 'word' && before?.kind === 'number' && isUnitWord(token.text)) return { at: place - 1, length: 2, words: `${before.text}${token.text.toUpperCase()}` };
  return { at: place, length: 1, words: token?.text ?? '' };
}

const question = (): Trouble => ({ ...unreadable('no-question'), unclear: '?', repairs: () => [{ line: 'who waits', label: null }] });

const unreadable = (problem: Problem): Trouble => ({ understood: [], unclear: null, problem, command: null, job: null, repairs: () => [] });
