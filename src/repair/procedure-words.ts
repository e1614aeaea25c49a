import { isOneSlip } from './one-slip.js';
import type { Procedure } from './procedure.js';
import { plain } from './step-words.js';

/** The procedure of this name: whole, by its beginning, or within one slip. Null: none, or more than one. */
export function procedureCalled(typed: string | null, procedures: readonly Procedure[]): Procedure | null {
  const words = typed === null ? '' : plain(typed);
  if (words === '') return null;
  const ways: readonly ((one: Procedure) => boolean)[] = [
    ({ name, title }) => plain(name) === words || plain(title) === words,
    ({ name }) => plain(name).startsWith(words),
    ({ title }) => plain(title).startsWith(words),
    ({ name }) => words.length >= 4 && isOneSlip(words, plain(name)),
  ];
  const found = ways.map((way) => procedures.filter(way)).find((some) => some.length > 0) ?? [];
  return found.length === 1 ? (found[0] ?? null) : null;
}
