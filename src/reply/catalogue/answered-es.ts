import type { ANSWERED_EN } from './answered-en.js';

export const ANSWERED_ES: Readonly<Record<keyof typeof ANSWERED_EN, string>> = {
  done: '**hecho por {who} {at}**',
  'done-hard': '**hecho por {who} {at}** (duro)',
  'done-soft': '**hecho por {who} {at}** (blando)',
  undone: '**deshecho por {who} {at}**',
  overtaken: '**ya no es así**, lo cambió {who} {at}',
};
