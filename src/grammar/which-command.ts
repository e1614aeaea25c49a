import type { CommandKind } from '../repair/commands.js';
import { COMMANDS } from './command-table.js';
import type { Declaration } from './declaration.js';
import type { Token, TokenOf } from './token.js';

/** The command a line gives, and how it was said. */
export interface Spoken {
  readonly declaration: Declaration;
  readonly forms: ReadonlySet<string>;
  /** The word `lamp` helps to say another command: `cure … lamp 35`, `off lamp A`. */
  readonly lampWord: boolean;
  /** False for `501 P2 lamp 35`, where lamp and card together say cure. */
  readonly byName: boolean;
}

export type Which = { readonly is: 'one'; readonly spoken: Spoken } | { readonly is: 'none' } | { readonly is: 'several' };

const JOINED_BY_LAMP: ReadonlySet<CommandKind> = new Set(['cure', 'off', 'on']);

/** One line says one thing; `lamp` is the only word that may also stand inside another command. */
export function whichCommand(tokens: readonly Token[]): Which {
  const forms = tokens.filter((token) => token.kind === 'form');
  const kinds = [...new Set(forms.map((form) => form.command))];
  const [first, second] = kinds;
  if (first === undefined) return { is: 'none' };
  const lampWord = forms.some(isLampWord) && !forms.some((form) => form.command === 'lamp' && !isLampWord(form));
  if (second === undefined) {
    const cures = first === 'lamp' && lampWord && tokens.some((token) => token.kind === 'card');
    return cures ? one('cure', forms, { lampWord, byName: false }) : one(first, forms, { lampWord, byName: true });
  }
  const other = kinds.find((kind) => kind !== 'lamp');
  if (kinds.length === 2 && lampWord && other !== undefined && JOINED_BY_LAMP.has(other)) return one(other, forms, { lampWord, byName: true });
  return { is: 'several' };
}

export const isLampWord = (token: Token): boolean => token.kind === 'form' && token.command === 'lamp' && token.form === 'lamp';

function one(kind: CommandKind, forms: readonly TokenOf<'form'>[], how: Pick<Spoken, 'lampWord' | 'byName'>): Which {
  const own = forms.filter((form) => form.command === kind).map((form) => form.form);
  return { is: 'one', spoken: { declaration: COMMANDS[kind], forms: new Set(own), ...how } };
}
