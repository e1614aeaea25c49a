import type { HOME_EN } from './home-en.js';

export const HOME_DE: Readonly<Record<keyof typeof HOME_EN, string>> = {
  mine: 'Meine Fugen',
  'none-of-mine': 'Keine deiner Fugen wartet auf etwas.',
  all: 'Alles, was wartet',
  'who-waits': 'Wer wartet',
  lamps: 'Strahler',
  help: 'Hilfe',
};
