import type { TAKEOVER_EN } from './takeover-en.js';

export const TAKEOVER_DE: Readonly<Record<keyof typeof TAKEOVER_EN, string>> = {
  'shift-ends': '**Deine Schicht endet {end}**, noch am Laufen: {jobs}. **Wer übernimmt?**',
  'stay-yours': 'Sie bleiben bei dir, bis jemand annimmt.',
  'not-all': 'Nicht alle: `handover {taker} except {job}`.',
  'some-name': 'NAME',
  nobody: '**Niemand hat übernommen** von {owners}, Schichtende {end}: {jobs}.',
  'comes-to-you': 'Was fällig wird, kommt zu dir.',
  'one-by-one': 'Einzeln weitergeben: `hand {job} to NAME`.',
  'jobs-more': '{jobs} und noch {more}',
};
