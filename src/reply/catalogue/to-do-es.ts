import type { TO_DO_EN } from './to-do-en.js';

export const TO_DO_ES: Readonly<Record<keyof typeof TO_DO_EN, string>> = {
  'turn-down': '**{heater} a {setting}, {card} admite {maximum}**: baja ya el calor y luego mide la junta.',
  'open-limit-passed': '**Se pasó el tiempo abierto (hasta {at})**: decide el jefe de taller.',
  unchecked: '{milestone}: **sin comprobar**. Todo el calor en una junta blanda deforma el panel.',
  'pad-counts-nothing': 'Una manta no sigue ninguna receta: **nada de ella cuenta**.',
  'pad-counts-readings': 'Una manta no sigue ninguna receta: solo cuenta lo que se mide en la junta.',
  'below-stage': 'La receta pide lámpara a {setting}: por debajo no cuenta nada.',
  'matt-tape': 'Usa cinta mate o una sonda de contacto.',
  'heat-back': '¿Vuelve la {heater, select, pad {manta} other {lámpara}}? Toca «Encendida» y luego mide.',
  'heat-on-again': '¿{heater, select, pad {Manta} other {Lámpara}} encendida otra vez? Toca «Encendida» y mide de nuevo.',
  'second-tap': 'Segunda respuesta de un técnico o del jefe de taller: hasta entonces espera.',
  'foreman-settles': 'Lo resuelve el jefe de taller.',
  'dry-air': 'El calor solo no adelanta nada aquí: seca el aire. El aire húmedo sí; escribe `air 20 rh 50`.',
  'read-again': 'Mide otra vez cuando esté caliente: hasta entonces cuentan {value}.',
  'closing-first': '**El taller cierra antes**: el calor cuenta solo hasta el cierre. ¿Quién se queda?',
  'read-once': 'Toma una lectura: hasta entonces cuenta solo el aire.',
  'lock-in': 'Toma una lectura para fijar sobre {at}: hasta entonces cuenta solo el aire.',
  'next-stage': 'Siguiente: lámpara **{setting}** durante {minutes} min, si el método de reparación lo permite.',
  'sheet-decides': 'La hoja de datos y el método de reparación deciden lo siguiente.',
  'off-then-sheet-decides': 'Apaga la {heater, select, pad {manta} other {lámpara}}. La hoja de datos y el método de reparación deciden lo siguiente.',
  'now-heat': 'Ahora el calor: solo cuenta el metal medido.',
};
