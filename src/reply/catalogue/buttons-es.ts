import type { BUTTONS_EN } from './buttons-en.js';

export const BUTTONS_ES: Readonly<Record<keyof typeof BUTTONS_EN, string>> = {
  'is-card': 'Es {card}',
  'all-covered': 'Todo cubierto',
  undo: 'Deshacer',
  'typing-error': 'Me equivoqué',
  closed: 'Cerrado',
  on: 'Encendida',
  'turned-up': 'Subida',
  'i-stay': 'Me quedo',
  hard: 'Duro',
  soft: 'Blando',
};
