import type { Assigned } from './assign-numbers.js';
import { COMMANDS, commandWord } from './command-table.js';
import type { FoundTime } from './find-time.js';
import type { Token } from './token.js';

/** The order in which a command is told back. */
const ORDER: readonly Token['kind'][] = ['form', 'number', 'joint', 'card', 'degrees', 'lamp', 'depth', 'humidity', 'method', 'milestone'];

/** What was understood of a line, in plain words: `lamp, job 501, 65 °C`. */
export function understood(tokens: readonly Token[], times: readonly FoundTime[], assigned: Assigned | null, openJobs: ReadonlySet<string>): string {
  const known = ORDER.flatMap((kind) => tokens.filter((token) => token.kind === kind)).map((token) => told(token, assigned, openJobs));
  const said = times.map((time) => time.tokens.map((token) => token.text).join(' '));
  return [...new Set([...known, ...said].filter((words) => words !== ''))].join(', ');
}

function told(token: Token, assigned: Assigned | null, openJobs: ReadonlySet<string>): string {
  switch (token.kind) {
    case 'form':
      return token.command === 'check' || token.form === 'pad' ? token.text : commandWord(COMMANDS[token.command]);
    case 'number':
      return numberTold(token, assigned, openJobs);
    case 'degrees':
      return token.unit === null ? `${token.value}°` : `${token.value} °${token.unit}`;
    case 'humidity':
      return `${token.percent} % humidity`;
    case 'card':
      return `card ${token.name}`;
    case 'lamp':
      return `${token.heater} ${token.name}`;
    case 'depth':
      return `${token.millimetres} mm`;
    default:
      return token.text;
  }
}

function numberTold(token: Extract<Token, { readonly kind: 'number' }>, assigned: Assigned | null, openJobs: ReadonlySet<string>): string {
  if (assigned?.job === token || (assigned === null && openJobs.has(token.text))) return `job ${token.text.replace('#', '')}`;
  if (assigned?.temperature === token || assigned?.air === token) return `${token.value}°`;
  if (assigned?.depth === token) return `${token.value} mm`;
  if (assigned?.entry === token) return `entry ${token.value}`;
  return assigned?.extra.includes(token) === true ? '' : token.text;
}
