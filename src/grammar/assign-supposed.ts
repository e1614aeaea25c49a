import type { Assigned, NumberToken, ValueToken } from './assign-numbers.js';
import type { KnownNames } from './known-names.js';
import type { Token } from './token.js';
import { isHeaterWord } from './which-command.js';

/**
 * The numbers of `what if 501 lamp 65 air 25`: a temperature stands behind its word; the job is the number that is left.
 * With one such word the temperature may also stand in front of it: `what if 501 65 lamp`.
 */
export function supposed(tokens: readonly Token[], values: readonly ValueToken[], names: KnownNames): Partial<Assigned> {
  const heat = behind(tokens, isHeaterWord, names);
  const air = behind(tokens, (token) => token.kind === 'form' && token.command === 'air', names);
  const left = values.filter((value) => value !== heat.value && value !== air.value);
  const wholes = left.filter(isWhole);
  const job = wholes.find((value) => value.marked) ?? wholes.find((value) => names.openJobs.has(value.text)) ?? wholes[0] ?? null;
  const before = left.find((value) => value !== job) ?? null;
  return { job, temperature: heat.value ?? (heat.said || !air.said ? before : null), air: air.value ?? (air.said && (heat.value !== null || !heat.said) ? before : null) };
}

/** The value right behind a word; of `lamp 501 65` the one that is no job. */
function behind(tokens: readonly Token[], is: (token: Token) => boolean, { openJobs }: KnownNames): { readonly said: boolean; readonly value: ValueToken | null } {
  const at = tokens.findIndex(is);
  if (at < 0) return { said: false, value: null };
  const [first = null, second = null] = valuesAt(tokens.slice(at + 1));
  const isJob = first !== null && isWhole(first) && (first.marked || openJobs.has(first.text));
  return { said: true, value: isJob ? second : first };
}

/** Values up to the next word, names between them left aside. */
function valuesAt(tokens: readonly Token[]): readonly ValueToken[] {
  const end = tokens.findIndex((token) => token.kind === 'form');
  return (end < 0 ? tokens : tokens.slice(0, end)).filter((token) => token.kind === 'number' || token.kind === 'degrees');
}

const isWhole = (value: ValueToken): value is NumberToken => value.kind === 'number' && value.whole;
