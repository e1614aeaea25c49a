import type { TERMS_EN } from './terms-en.js';

export const TERMS_DE: Readonly<Record<keyof typeof TERMS_EN, string>> = {
  'milestone-handling': 'Handfestigkeit',
  'milestone-full': 'Endfestigkeit',
  'milestone-sand': 'Schleifzeit',
  'milestone-drive-away': 'Standzeit',
  'milestone-recoat-from': 'Überlackierzeit',
  'milestone-skin': 'Haut',
  'milestone-through': 'Durchhärtung',
  'milestone-flash-off': 'Ablüftzeit',
  'milestone-dwell': 'Zeit bei Metalltemperatur',
  'milestone-drip-free': 'Abtropfzeit',
  'milestone-dry': 'Trockenzeit',
  'milestone-fire-watch': 'Brandwache',
  'new-time': '{at} neuer Zeit',
  share: '{percent} % der Wartezeit',
  minutes: '{minutes} min',
  hours: '{hours} h',
  'hours-and-minutes': '{hours} h {minutes}',
  days: '{days, plural, one {# Tag} other {# Tage}}',
};
