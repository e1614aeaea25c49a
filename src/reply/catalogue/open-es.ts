import type { OPEN_EN } from './open-en.js';

export const OPEN_ES: Readonly<Record<keyof typeof OPEN_EN, string>> = {
  'close-panel': 'Cierra el panel antes de **{at}** ({figures}).',
  'close-glass': 'Coloca la luna antes de **{at}** ({figures}).',
  'close-bead': 'Alisa el cordón antes de **{at}** ({figures}).',
  'tap-panel': 'Toca «Cerrado» cuando el panel esté puesto.',
  'tap-glass': 'Toca «Cerrado» cuando la luna esté puesta.',
  'tap-bead': 'Toca «Cerrado» cuando el cordón esté alisado.',
  'no-sheet-time': '{card} **no indica** tiempo abierto: mira la hoja de datos.',
  'do-not-start': '**No empieces**: {temperature} supera todas las filas de tiempo abierto de {card}.',
  'limit-held': '**RETENIDO**: se pasó el tiempo abierto, hasta **{at}** ({figures}); decide el jefe de taller.',
  'limit-decided': 'Se pasó el tiempo abierto, hasta **{at}** ({figures}); lo decidió el jefe de taller.',
  'figures-at': '{minutes} min a {temperature}',
  'figures-unknown': '{minutes} min, aire no conocido',
  'figures-were': 'Eran {figures}.',
  'damp-held': '**RETENIDO**: {why}. Decide el jefe de taller.',
  'how-deep': '**¿Qué profundidad tiene el cordón?** Hasta entonces, sin hora para el curado en profundidad.',
  depth: '{depth, number} mm',
};
