import { replaced, typedAt, type Draft } from './draft.js';
import type { FoundTime } from './find-time.js';
import type { Finding } from './line-state.js';
import type { Resolved } from './resolve-time.js';

export const secondTime = (draft: Draft, first: FoundTime, second: FoundTime): Finding => ({
  unclear: typedAt(draft, second.tokens),
  problem: 'only one time',
  repairs: () => [second, first].map((time) => ({ line: cut(draft, time), label: null })),
});

/** A command to which no time belongs. */
export const noTimeHere = (draft: Draft, time: FoundTime, word: string): Finding => ({
  unclear: typedAt(draft, time.tokens),
  problem: `no time: ${word} takes none`,
  repairs: () => [{ line: cut(draft, time), label: null }],
});

export const wrongTime = (draft: Draft, time: FoundTime, { problem, repairs }: Extract<Resolved, { readonly ok: false }>): Finding => ({
  unclear: typedAt(draft, time.tokens),
  problem,
  repairs: () => [...repairs.map(({ words, label }) => ({ line: replaced(draft, placeOf(time), words), label })), { line: cut(draft, time), label: null }],
});

const placeOf = ({ tokens }: FoundTime): { first: number; last: number } => ({ first: tokens[0]?.first ?? 0, last: tokens.at(-1)?.last ?? 0 });

const cut = (draft: Draft, time: FoundTime): string => replaced(draft, placeOf(time), '');
