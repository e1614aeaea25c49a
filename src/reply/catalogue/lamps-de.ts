import type { LAMPS_EN } from './lamps-en.js';

export const LAMPS_DE: Readonly<Record<keyof typeof LAMPS_EN, string>> = {
  none: 'Für diese Werkstatt ist **kein Strahler und keine Heizmatte** aufgeschrieben, und als an ist nichts notiert.',
  free: '{names} {count, plural, other {frei}}',
  on: 'an',
  till: '{line} bis {at}',
  'due-since': '{line}, fällig seit {at}',
  'off-at': '{line}, **aus {at}**, wenn niemand bleibt',
  left: '**{name}** {title} ist fertig, **noch an?**',
  'left-seen': '**{name}** {title} ist fertig, **noch an?** Zuletzt gesehen {at}',
  unseen: '**{name}** {title} nicht mehr an gesehen',
  'unseen-since': '**{name}** {title} nicht mehr an gesehen seit {at}',
};
