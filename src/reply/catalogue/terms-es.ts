import type { TERMS_EN } from './terms-en.js';

export const TERMS_ES: Readonly<Record<keyof typeof TERMS_EN, string>> = {
  'milestone-handling': 'resistencia de manipulación',
  'milestone-full': 'resistencia final',
  'milestone-sand': 'tiempo de lijado',
  'milestone-drive-away': 'tiempo de espera',
  'milestone-recoat-from': 'tiempo de repintado',
  'milestone-skin': 'piel',
  'milestone-through': 'curado en profundidad',
  'milestone-flash-off': 'tiempo de evaporación',
  'milestone-dwell': 'tiempo a temperatura del metal',
  'milestone-drip-free': 'tiempo de goteo',
  'milestone-dry': 'tiempo de secado',
  'milestone-fire-watch': 'vigilancia de incendio',
  'new-time': '{at} hora nueva',
  share: '{percent} % de la espera',
  minutes: '{minutes} min',
  hours: '{hours} h',
  'hours-and-minutes': '{hours} h {minutes}',
  days: '{days, plural, one {# día} other {# días}}',
};
