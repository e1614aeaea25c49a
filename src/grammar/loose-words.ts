import { replaced, typedAt, without } from './draft.js';
import type { Finding, LineState } from './line-state.js';
import { timeWord, unitMinutes, WEEKDAYS } from './time-words.js';
import type { Token } from './token.js';

/** Words that are known and say nothing where they stand: `20 min` without `ago`, a lone `yesterday`. */
export function looseWords({ draft, tokens }: LineState, loose: readonly Token[]): Finding {
  const lengths = loose.filter(isLength);
  const numbers = tokens.filter((token, index) => token.kind === 'number' && lengths.includes(tokens[index + 1] ?? token));
  return {
    unclear: typedAt(draft, [...numbers, ...loose].sort((one, other) => one.first - other.first)),
    problem: lengths.length > 0 ? 'how long ago, or at what time' : loose.some((token) => isDay(token) || isAt(token)) ? 'a time of day' : 'what this word says here',
    repairs: () => [
      ...lengths.map((token) => ({ line: replaced(draft, token, `${typedAt(draft, [token])} ago`), label: 'ago' })),
      ...tokens.flatMap((token, index) => withColon(token, loose.includes(tokens[index - 1] ?? token)).map((time) => ({ line: replaced(draft, token, time), label: time }))),
      ...loose.filter(isDay).map((token) => ({ line: replaced(draft, token, `${token.text} 16:00`), label: null })),
      { line: without(draft, loose), label: null },
      { line: without(draft, [...loose, ...numbers]), label: null },
    ],
  };
}

const isAt = (token: Token): boolean => token.kind === 'word' && ['at', 'since', 'about'].includes(timeWord(token.text) ?? '');

const isLength = (token: Token): boolean => token.kind === 'amount' || token.kind === 'range' || (token.kind === 'word' && unitMinutes(token.text) !== null);

/** `at 1340`: four figures could also be a job. */
function withColon(token: Token, follows: boolean): readonly string[] {
  const [, hour, minute] = /^(\d{1,2})(\d{2})$/.exec(token.text) ?? [];
  return follows && token.kind === 'number' && hour !== undefined && minute !== undefined ? [`${hour}:${minute}`] : [];
}

function isDay(token: Token): boolean {
  const meaning = token.kind === 'word' ? timeWord(token.text) : null;
  return meaning === 'today' || meaning === 'yesterday' || WEEKDAYS.some((day) => day === meaning);
}
