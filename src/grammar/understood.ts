import type { Assigned } from './assign-numbers.js';
import { COMMANDS, shownWords } from './command-table.js';
import type { FoundTime } from './find-time.js';
import { asTyped, type Said } from './said.js';
import type { Token } from './token.js';

/** The order in which a command is told back. */
const ORDER: readonly Token['kind'][] = ['form', 'number', 'joint', 'card', 'degrees', 'lamp', 'depth', 'humidity', 'method', 'milestone'];

/** What was understood of a line, one thing after the other: `lamp, job 501, 65 °C`. */
export function understood(tokens: readonly Token[], times: readonly FoundTime[], assigned: Assigned | null, openJobs: ReadonlySet<string>): readonly Said[] {
  const known = ORDER.flatMap((kind) => tokens.filter((token) => token.kind === kind)).flatMap((token) => told(token, assigned, openJobs));
  const said = times.flatMap((time) => asTyped(time.tokens.map((token) => token.text).join(' ')));
  return [...known, ...said];
}

function told(token: Token, assigned: Assigned | null, openJobs: ReadonlySet<string>): readonly Said[] {
  switch (token.kind) {
    case 'form':
      return token.command === 'check' || token.form === 'pad' ? asTyped(token.text) : [{ is: 'command', word: shownWords(COMMANDS[token.command]) }];
    case 'number':
      return numberTold(token, assigned, openJobs);
    case 'degrees':
      return [{ is: 'degrees', value: token.value, unit: token.unit }];
    case 'humidity':
      return [{ is: 'humidity', value: token.percent }];
    case 'card':
      return [{ is: 'card', card: token.name }];
    case 'lamp':
      return [{ is: 'heater', heater: token.heater, name: token.name }];
    case 'depth':
      return [{ is: 'millimetres', value: token.millimetres }];
    default:
      return asTyped(token.text);
  }
}

function numberTold(token: Extract<Token, { readonly kind: 'number' }>, assigned: Assigned | null, openJobs: ReadonlySet<string>): readonly Said[] {
  if (assigned?.job === token || (assigned === null && openJobs.has(token.text))) return [{ is: 'job', job: token.text.replace('#', '') }];
  if (assigned?.temperature === token || assigned?.air === token) return [{ is: 'degrees', value: token.value, unit: null }];
  if (assigned?.depth === token) return [{ is: 'millimetres', value: token.value }];
  if (assigned?.entry === token) return [{ is: 'entry', entry: token.value }];
  return assigned?.extra.includes(token) === true ? [] : asTyped(token.text);
}
