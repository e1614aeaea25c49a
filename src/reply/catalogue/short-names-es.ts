import type { SHORT_NAMES_EN } from './short-names-en.js';

export const SHORT_NAMES_ES: Readonly<Record<keyof typeof SHORT_NAMES_EN, string>> = {
  handling: 'manipulación',
  full: 'final',
  sand: 'lijado',
  'drive-away': 'espera',
  'recoat-from': 'repintado',
  skin: 'piel',
  through: 'curado en profundidad',
  'flash-off': 'evaporación',
  dwell: 'tiempo de metal',
  'drip-free': 'goteo',
  dry: 'secado',
  'fire-watch': 'vigilancia de incendio',
};
