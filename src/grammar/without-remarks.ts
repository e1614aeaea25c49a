import type { CommandKind } from '../repair/commands.js';
import { nearWords } from './near-words.js';
import { isNegation } from './small-words.js';
import { timeWord } from './time-words.js';
import type { Token } from './token.js';

/**
 * Commands that are better carried out without a remark than not at all, for what they do is on the safe side:
 * `soft at the edge` holds the car, `weld 7220 bracket` brings the caution.
 */
const ON_THE_SAFE_SIDE: ReadonlySet<CommandKind> = new Set(['check', 'weld']);

/** Leaves out words that nobody knows behind such a command; a word that could be a slip, or turns the line round, stays. */
export function withoutRemarks(tokens: readonly Token[]): readonly Token[] {
  const forms = tokens.filter((token) => token.kind === 'form');
  const safe = forms.every((form) => ON_THE_SAFE_SIDE.has(form.command) && (form.command !== 'check' || form.form === 'soft'));
  const [first] = forms;
  if (!safe || first === undefined || tokens.some((token) => isNegation(token.text) && token.kind !== 'form')) return tokens;
  return tokens.filter((token, index) => {
    if (token.first < first.first) return true;
    const next = tokens[index + 1];
    return !(isRemark(token) || (isPlaceLead(token) && next !== undefined && isRemark(next)));
  });
}

const isRemark = (token: Token): boolean => token.kind === 'unknown' && /^\p{L}+$/u.test(token.text) && nearWords(token.text).length === 0;

const isPlaceLead = (token: Token): boolean => token.kind === 'word' && timeWord(token.text) === 'at';
