import { isDepthUnit, isHumidityWord, isUnitWord, unitNamed } from './small-words.js';
import { isWord, type Meaning, type Token } from './token.js';

/** Puts numbers and the words that belong to them together: `86 F`, `rh 55`, `55 % rh`. */
export const mergeValues = (tokens: readonly Token[]): readonly Token[] => merging(tokens, (at) => humidityAt(tokens, at) ?? degreesAt(tokens, at));

/** `5 mm`, before anything else is read: such a number is neither a time nor a temperature. */
export const mergeDepths = (tokens: readonly Token[]): readonly Token[] => merging(tokens, (at) => depthAt(tokens, at));

function merging(tokens: readonly Token[], valueAt: (at: number) => Value | null): readonly Token[] {
  const merged: Token[] = [];
  let at = 0;
  while (at < tokens.length) {
    const first = tokens[at];
    if (first === undefined) break;
    const value = valueAt(at) ?? { meaning: null, length: 1 };
    const last = tokens[at + value.length - 1] ?? first;
    merged.push(value.meaning === null ? first : { first: first.first, last: last.last, text: tokens.slice(at, at + value.length).map((token) => token.text).join(' '), ...value.meaning });
    at += value.length;
  }
  return merged;
}

interface Value {
  readonly meaning: Meaning;
  readonly length: number;
}

function depthAt(tokens: readonly Token[], at: number): Value | null {
  const number = tokens[at];
  return number?.kind === 'number' && !number.marked && wordAt(tokens, at + 1, isDepthUnit) ? { meaning: { kind: 'depth', millimetres: number.value }, length: 2 } : null;
}

function degreesAt(tokens: readonly Token[], at: number): Value | null {
  const [number, sign, unit] = [tokens[at], tokens[at + 1], tokens[at + 2]];
  const loose = number?.kind === 'degrees' && number.unit === null;
  if (!(number?.kind === 'number' && !number.marked) && !loose) return null;
  if (sign?.kind !== 'word' || !isUnitWord(sign.text)) return null;
  const named = unitNamed(sign.text);
  const split = named === null && unit?.kind === 'word' && isUnitWord(unit.text) && unitNamed(unit.text) !== null;
  return { meaning: { kind: 'degrees', value: number.value, unit: split ? unitNamed(unit.text) : named }, length: split ? 3 : 2 };
}

function humidityAt(tokens: readonly Token[], at: number): Value | null {
  const named = wordAt(tokens, at, isHumidityWord);
  const number = tokens[at + (named ? 1 : 0)];
  if (number?.kind !== 'percent' && number?.kind !== 'number') return null;
  let length = named ? 2 : 1;
  const sign = number.kind === 'percent' || isWord(tokens[at + length], '%');
  if (number.kind === 'number' && sign) length += 1;
  if (!named && !sign) return null;
  if (!named && wordAt(tokens, at + length, isHumidityWord)) length += 1;
  return { meaning: { kind: 'humidity', percent: number.value }, length };
}

const wordAt = (tokens: readonly Token[], at: number, is: (text: string) => boolean): boolean => {
  const token = tokens[at];
  return token?.kind === 'word' && is(token.text);
};
