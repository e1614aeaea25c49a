import type { BUTTONS_EN } from './buttons-en.js';

export const BUTTONS_DE: Readonly<Record<keyof typeof BUTTONS_EN, string>> = {
  'is-card': 'Es ist {card}',
  'all-covered': 'Alles bedeckt',
  undo: 'Zurücknehmen',
  'typing-error': 'Tippfehler',
  closed: 'Geschlossen',
  on: 'An',
  'turned-up': 'Hochgedreht',
  'i-stay': 'Ich bleibe',
  hard: 'Hart',
  soft: 'Weich',
};
