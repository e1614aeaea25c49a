import { replaced, typedAt, without } from './draft.js';
import type { Finding, LineState } from './line-state.js';
import { ago, asTyped } from './said.js';
import { isNegation } from './small-words.js';
import { timeWord, unitMinutes, WEEKDAYS } from './time-words.js';
import type { Token } from './token.js';

/** Words that are known and say nothing where they stand: `20 min` without `ago`, a lone `yesterday`. */
export function looseWords({ draft, tokens, spoken }: LineState, loose: readonly Token[]): Finding {
  const isAhead = spoken?.declaration.takes.some((parameter) => parameter === 'from' || parameter === 'ready') === true;
  const spans = loose.filter(isLength);
  // Minutes that are to come are no minutes ago.
  const lengths = isAhead ? [] : spans;
  const numbers = tokens.filter((token, index) => token.kind === 'number' && isLengthWord(tokens[index + 1]) && loose.includes(tokens[index + 1] ?? token));
  return {
    unclear: typedAt(draft, [...numbers, ...loose].sort((one, other) => one.first - other.first)),
    problem: lengths.length > 0 ? 'ago-or-time' : spans.length > 0 || loose.some((token) => isDay(token) || isAt(token)) ? 'time-of-day' : 'fitting-word',
    repairs: () => [
      ...lengths.map((token) => ({ line: replaced(draft, token, `${token.text} ago`), label: ago(typedAt(draft, [...numbers, token])) })),
      ...tokens.flatMap((token, index) => withColon(token, loose.includes(tokens[index - 1] ?? token)).map((time) => ({ line: replaced(draft, token, time), label: asTyped(time) }))),
      ...loose.filter(isDay).map((token) => ({ line: replaced(draft, token, `${token.text} 16:00`), label: null })),
      ...(loose.some((token) => isNegation(token.text)) ? [] : [...(isAhead ? [] : [loose]), [...loose, ...numbers]].map((tokensLeftOut) => ({ line: without(draft, tokensLeftOut), label: null }))),
    ],
  };
}

const isAt = (token: Token): boolean => token.kind === 'word' && ['at', 'since', 'for', 'about'].includes(timeWord(token.text) ?? '');

const isLengthWord = (token: Token | undefined): boolean => token?.kind === 'word' && unitMinutes(token.text) !== null;

const isLength = (token: Token): boolean => token.kind === 'amount' || token.kind === 'range' || isLengthWord(token);

/** `at 1340`: four figures could also be a job. */
function withColon(token: Token, follows: boolean): readonly string[] {
  const [, hour, minute] = /^(\d{1,2})(\d{2})$/.exec(token.text) ?? [];
  return follows && token.kind === 'number' && hour !== undefined && minute !== undefined ? [`${hour}:${minute}`] : [];
}

function isDay(token: Token): boolean {
  const meaning = token.kind === 'word' ? timeWord(token.text) : null;
  return meaning === 'today' || meaning === 'yesterday' || meaning === 'tomorrow' || WEEKDAYS.some((day) => day === meaning);
}
