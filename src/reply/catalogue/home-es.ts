import type { HOME_EN } from './home-en.js';

export const HOME_ES: Readonly<Record<keyof typeof HOME_EN, string>> = {
  mine: 'Mis curados',
  'none-of-mine': 'Ninguno de tus curados espera nada.',
  all: 'Todo lo que espera',
  'who-waits': 'Quién espera',
  lamps: 'Lámparas',
  help: 'Ayuda',
};
