import { replaced, typedAt, type Draft } from './draft.js';
import type { FoundTime } from './find-time.js';
import { COMMANDS, commandWord, shownWords } from './command-table.js';
import type { Finding, LineState } from './line-state.js';
import type { ShownWord } from './said.js';
import { isReadyWord } from './time-words.js';
import type { Token } from './token.js';
import type { Repair } from './trouble.js';
import type { Resolved } from './clock-of-day.js';

/** All that `when start 501 P1 full 5 mm` can hold. */
const AIMS: ReadonlySet<Token['kind']> = new Set(['form', 'number', 'joint', 'card', 'milestone', 'depth']);

export const secondTime = (draft: Draft, first: FoundTime, second: FoundTime): Finding => ({
  unclear: typedAt(draft, second.tokens),
  problem: 'one-time',
  repairs: () => [second, first].map((time) => ({ line: cut(draft, time), label: null })),
});

/** `closed 501 by fri 16:00`: a time to be ready by belongs to a question. */
export const readyByHere = (state: LineState, time: FoundTime): Finding => ({
  unclear: typedAt(state.draft, time.tokens),
  problem: state.spoken?.declaration.takes.includes('from') === true ? 'word-from' : 'time-come',
  repairs: () => [...withFrom(state, time), ...asQuestion(state), { line: cut(state.draft, time), label: null }],
});

function withFrom({ draft, spoken }: LineState, time: FoundTime): readonly Repair[] {
  if (spoken?.declaration.takes.includes('from') !== true) return [];
  const said = typedAt(draft, time.tokens.filter((token) => !isReadyWord(token)));
  return [{ line: replaced(draft, placeOf(time), `from ${said}`), label: [{ is: 'from', time: said }] }];
}

function asQuestion({ draft, tokens }: LineState): readonly Repair[] {
  const [said, other] = tokens.filter((token) => token.kind === 'form');
  if (said === undefined || other !== undefined || !tokens.every((token) => AIMS.has(token.kind))) return [];
  const question = COMMANDS['latest-start'];
  return [{ line: replaced(draft, said, commandWord(question)), label: [{ is: 'command', word: shownWords(question) }] }];
}

/** `when start 501 P1 ready`. */
export const readyWithoutTime = ({ draft }: LineState, ready: Token): Finding => ({
  unclear: null,
  problem: 'ready-time',
  repairs: () => [{ line: replaced(draft, ready, 'ready fri 16:00'), label: null }],
});

/** A command to which no time belongs. */
export const noTimeHere = (draft: Draft, time: FoundTime, word: ShownWord): Finding => ({
  unclear: typedAt(draft, time.tokens),
  problem: { is: 'takes-none', thing: 'time', word },
  repairs: () => [{ line: cut(draft, time), label: null }],
});

export const wrongTime = (draft: Draft, time: FoundTime, { problem, repairs }: Extract<Resolved, { readonly ok: false }>): Finding => ({
  unclear: typedAt(draft, time.tokens),
  problem,
  repairs: () => [...repairs.map(({ words, label }) => ({ line: replaced(draft, placeOf(time), words), label })), { line: cut(draft, time), label: null }],
});

const placeOf = ({ tokens }: FoundTime): { first: number; last: number } => ({ first: tokens[0]?.first ?? 0, last: tokens.at(-1)?.last ?? 0 });

const cut = (draft: Draft, time: FoundTime): string => replaced(draft, placeOf(time), '');
