import type { FoundTime } from './find-time.js';
import { isStatedMilestone } from './small-words.js';
import type { Token, TokenOf } from './token.js';
import { isHeaterWord } from './which-command.js';

type Form = TokenOf<'form'>;

/** Words that say less than they seem to, taken out or put right before anybody asks which command it is. */
export const spokenPlainly = (tokens: readonly Token[], times: readonly FoundTime[]): readonly Token[] => stated(onTheJob(startedLamp(tokens, times)));

/** `31 lamp 35 started 10 min ago`: without a card it is the lamp that was started. */
function startedLamp(tokens: readonly Token[], times: readonly FoundTime[]): readonly Token[] {
  const lamp = tokens.findIndex(isHeaterWord);
  const start = tokens.findIndex(isStart);
  const said = lamp >= 0 && start > lamp && times.length > 0 && !times.some((time) => time.by) && !tokens.some((token) => token.kind === 'card');
  return said ? tokens.filter((token) => !isStart(token)) : tokens;
}

const isStart = (token: Token): token is Form => token.kind === 'form' && token.command === 'cure' && (token.form === 'start' || token.form === 'begun');

/** `lamp A 30 on 7214`: on which job. */
function onTheJob(tokens: readonly Token[]): readonly Token[] {
  if (!tokens.some(isHeaterWord)) return tokens;
  return tokens.filter((token, index) => {
    const [before, after] = [tokens[index - 1], tokens[index + 1]];
    const on = token.kind === 'form' && token.command === 'on' && token.text === 'on';
    return !(on && (before?.kind === 'number' || before?.kind === 'degrees') && after?.kind === 'number' && after.whole);
  });
}

/** `501 handfest`: said of a joint, the word is the answer to its check. */
function stated(tokens: readonly Token[]): readonly Token[] {
  const milestone = tokens.find((token) => token.kind === 'milestone' && isStatedMilestone(token.text));
  if (milestone === undefined || tokens.some((token) => token.kind === 'form')) return tokens;
  return [...tokens, { kind: 'form', command: 'check', form: 'hard', first: milestone.first, last: milestone.last, text: milestone.text }];
}
