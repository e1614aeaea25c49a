import { isCardWord, isNotWord } from './small-words.js';
import type { Token, TokenOf } from './token.js';

/**
 * `501 is P2 not P1`, `no its P2 not P1`: another material than was written down. The card behind `not` is the wrong one.
 * Beside any other command the word `card` only says that a card's name follows.
 */
export function matchCorrection(tokens: readonly Token[]): readonly Token[] {
  const others = tokens.filter((token) => token.kind === 'form' && token.command !== 'wrong-card' && !isNo(token));
  if (others.length > 0) return tokens.filter((token, index) => !(isCardForm(token) && tokens[index + 1]?.kind === 'card'));
  const at = tokens.findIndex((token) => token.kind === 'word' && isNotWord(token.text));
  const not = tokens[at];
  const wrong = tokens.slice(at + 1).find((token) => !isCardForm(token));
  if (not === undefined || wrong?.kind !== 'card' || tokens.some((token) => token !== wrong && token.kind === 'card' && token.name === wrong.name)) return tokens;
  const said: TokenOf<'form'> = { kind: 'form', command: 'wrong-card', form: 'not', first: not.first, last: wrong.last, text: `${not.text} ${wrong.text}` };
  const rest = (part: readonly Token[]): readonly Token[] => part.filter((token) => !isNo(token) && !isCardForm(token));
  return [...rest(tokens.slice(0, at)), said, ...rest(tokens.slice(tokens.indexOf(wrong) + 1))];
}

/** `no, its P2`: here it answers nobody's check. */
const isNo = (token: Token): boolean => token.kind === 'form' && token.command === 'check' && token.text === 'no';

const isCardForm = (token: Token): boolean => token.kind === 'form' && token.command === 'wrong-card' && isCardWord(token.text);
