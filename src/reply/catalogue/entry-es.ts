import type { ENTRY_EN } from './entry-en.js';

export const ENTRY_ES: Readonly<Record<keyof typeof ENTRY_EN, string>> = {
  'nothing-waits': 'En esta ficha ya no hay nada que esperar.',
  'forecast-was': '{forecast} (antes {was}).',
  'open-was-on': 'Con {card} era {at}.',
  'open-used': '{used} de {limit} min usados.',
  'air-along': 'Aire {air}; el metal puede estar más frío: mide.',
  'metal-margin': 'Metal {margin}.',
  'too-hot': '**{title} DEMASIADO CALIENTE {value}**, límite {limit}.',
  'too-hot-card': '**{title} es {card}, no {before}: DEMASIADO CALIENTE {value}**, límite {limit}.',
  'heat-away': 'Apaga o aparta ya la {heater, select, pad {manta} other {lámpara}}. Se avisa al jefe de taller; el curado queda retenido.',
};
