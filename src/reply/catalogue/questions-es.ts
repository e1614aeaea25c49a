import type { QUESTIONS_EN } from './questions-en.js';

export const QUESTIONS_ES: Readonly<Record<keyof typeof QUESTIONS_EN, string>> = {
  'limit-undecided': 'Se pasó el tiempo abierto (hasta {at}): decide el jefe de taller.',
  'limit-decided': 'Se pasó el tiempo abierto (hasta {at}); lo decidió el jefe de taller.',
  'recoat-by': 'Repinta antes de **{at}**; después, prepáralo de nuevo.',
  'law-first': 'Antes van la hoja de datos, el método del fabricante del vehículo, las normas locales y tu habilitación. Esto es un recordatorio, no un permiso.',
};
