import type { LIKELY_EN } from './likely-en.js';

export const LIKELY_DE: Readonly<Record<keyof typeof LIKELY_EN, string>> = {
  'if-read': '; etwa {at}, wenn eine Messung es zeigt',
  'likely-if-read': ', wahrscheinlich etwa {at}, wenn eine Messung es zeigt',
  'by-law': 'Nach dem Gesetz des Datenblatts ({energy} kJ/mol) wahrscheinlich {at}; danach wird nie gemeldet.',
  unannounced: 'Wahrscheinlich {at} (Temperaturen, wie sie wohl sind); angesagt ist noch nichts.',
  announced: 'Wahrscheinlich {at} (Temperaturen, wie sie wohl sind); angesagt ist {due}.',
};
