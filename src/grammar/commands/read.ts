import { built, missing, type Declaration } from '../declaration.js';

export const read: Declaration = {
  kind: 'read',
  /** `probe` after the value says how it was measured. */
  forms: { read: { en: ['read', 'reading', 'temp', 'meas'], de: ['messen', 'messung', 'gemessen', 'wert', 'temperatur'], es: ['medir', 'medida', 'lectura', 'temperatura'] }, probe: { en: ['probe'], de: ['fühler'], es: ['sonda'] } },
  takes: ['job', 'joint', 'temperature', 'method', 'time'],
  usage: 'read JOB 58 [tape | contact | bare] [time]',
  meaning: 'joint reading',
  example: ({ job }) => `read ${job} 58 tape`,
  build: ({ job, joint, temperature, method, when }) => {
    if (temperature === null) return missing('a temperature', '58', '58C');
    return built({ kind: 'read', job, joint, value: temperature, method, when });
  },
};
