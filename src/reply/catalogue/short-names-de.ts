import type { SHORT_NAMES_EN } from './short-names-en.js';

export const SHORT_NAMES_DE: Readonly<Record<keyof typeof SHORT_NAMES_EN, string>> = {
  handling: 'Handfestigkeit',
  full: 'Endfestigkeit',
  sand: 'Schleifzeit',
  'drive-away': 'Standzeit',
  'recoat-from': 'Überlackierzeit',
  skin: 'Haut',
  through: 'Durchhärtung',
  'flash-off': 'Ablüftzeit',
  dwell: 'Metallzeit',
  'drip-free': 'Abtropfzeit',
  dry: 'Trockenzeit',
  'fire-watch': 'Brandwache',
};
