import type { ANSWERED_EN } from './answered-en.js';

export const ANSWERED_DE: Readonly<Record<keyof typeof ANSWERED_EN, string>> = {
  done: '**erledigt von {who} {at}**',
  'done-hard': '**erledigt von {who} {at}** (hart)',
  'done-soft': '**erledigt von {who} {at}** (weich)',
  undone: '**zurückgenommen von {who} {at}**',
  overtaken: '**gilt nicht mehr**, geändert von {who} {at}',
};
