import type { LAMPS_EN } from './lamps-en.js';

export const LAMPS_ES: Readonly<Record<keyof typeof LAMPS_EN, string>> = {
  none: '**Ninguna lámpara ni manta** está anotada para este taller, y ninguna consta encendida.',
  free: '{names} {count, plural, one {libre} other {libres}}',
  on: 'encendida',
  till: '{line} hasta {at}',
  'due-since': '{line}, toca desde {at}',
  'off-at': '{line}, **apagada {at}** si nadie se queda',
  left: '**{name}** {title} ha terminado, **¿sigue encendida?**',
  'left-seen': '**{name}** {title} ha terminado, **¿sigue encendida?** Vista por última vez {at}',
  unseen: '**{name}** {title} ya no vista encendida',
  'unseen-since': '**{name}** {title} ya no vista encendida desde {at}',
};
