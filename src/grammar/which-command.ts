import type { CommandKind } from '../repair/commands.js';
import { COMMANDS } from './command-table.js';
import type { Declaration } from './declaration.js';
import type { FoundTime } from './find-time.js';
import type { Token, TokenOf } from './token.js';

/** The command a line gives, and how it was said. */
export interface Spoken {
  readonly declaration: Declaration;
  readonly forms: ReadonlySet<string>;
  /** The word `lamp` or `pad` stands in the line and may help to say another command: `cure … lamp 35`, `off pad 1`. */
  readonly heaterWord: boolean;
  /** False for `501 P2 lamp 35`, where lamp and card together say cure. */
  readonly byName: boolean;
}

export type Which = { readonly is: 'one'; readonly spoken: Spoken } | { readonly is: 'none' } | { readonly is: 'several' };
type Form = TokenOf<'form'>;

/** Which words of another command may stand inside a command: `what if 501 air 25`, `paste 501 depth 5 mm`. */
const HELPERS: Readonly<Partial<Record<CommandKind, ReadonlySet<CommandKind>>>> = {
  paste: new Set(['depth', 'air']),
  closed: new Set(['depth', 'air']),
  cure: new Set(['lamp', 'depth', 'air']),
  check: new Set(['lamp']),
  off: new Set(['lamp']),
  on: new Set(['lamp']),
  'what-if': new Set(['lamp', 'air', 'off']),
  'latest-start': new Set(['depth']),
};

/** One line says one thing; only words that name a part of it may stand beside its own. */
export function whichCommand(tokens: readonly Token[], times: readonly FoundTime[]): Which {
  const forms = tokens.filter((token) => token.kind === 'form');
  const kinds = [...new Set(forms.map((form) => form.command))];
  const heaterWord = forms.some(isHeaterWord) && !forms.some((form) => form.command === 'lamp' && !isHeaterWord(form));
  if (kinds.length === 0) return { is: 'none' };
  if (kinds.every((kind) => kind === 'lamp') && heaterWord && tokens.some((token) => token.kind === 'card')) return one('cure', forms, { heaterWord, byName: false });
  if (asksForStart(forms, times)) return one('latest-start', forms, { heaterWord, byName: true });
  const main = kinds.find((kind) => forms.every((form) => form.command === kind || mayHelp(form, kind, tokens)));
  return main === undefined ? { is: 'several' } : one(main, forms, { heaterWord, byName: true });
}

function mayHelp(form: Form, kind: CommandKind, tokens: readonly Token[]): boolean {
  if (HELPERS[kind]?.has(form.command) !== true) return false;
  // `don't know when` is an answer about a lamp, and supposes nothing.
  if (form.command === 'off') return form.form === 'off';
  if (form.command === 'depth') return tokens.some((token) => token.kind === 'depth');
  if (kind === 'check') return isLampAfterSoft(form, tokens);
  return form.command !== 'lamp' || (isHeaterWord(form) && !tokens.some((token) => token.kind === 'form' && token.command === 'lamp' && !isHeaterWord(token)));
}

/** `402 soft. lamp`: heat on top, and which lamp is asked; with a setting it is a line of its own. */
function isLampAfterSoft(form: Form, tokens: readonly Token[]): boolean {
  const checks = tokens.flatMap((token) => (token.kind === 'form' && token.command === 'check' ? [token.form] : []));
  return form.form === 'lamp' && checks.includes('soft') && checks.every((one) => one === 'soft' || one === 'check') && tokens.filter((token) => token.kind === 'number' || token.kind === 'degrees').length <= 1;
}

/** `start 501 P1 ready fri 16:00`: what has to be ready by then has not been started. */
const asksForStart = (forms: readonly Form[], times: readonly FoundTime[]): boolean => times.some((time) => time.by) && forms.every((form) => form.form === 'start');

export const isHeaterWord = (token: Token): token is Form => token.kind === 'form' && token.command === 'lamp' && token.form !== 'up';

export const isPadWord = (token: Token): boolean => isHeaterWord(token) && token.form === 'pad';

function one(kind: CommandKind, forms: readonly Form[], how: Pick<Spoken, 'heaterWord' | 'byName'>): Which {
  const own = forms.filter((form) => form.command === kind).map((form) => form.form);
  return { is: 'one', spoken: { declaration: COMMANDS[kind], forms: new Set(own), ...how } };
}
