import { built, missing, type Declaration } from '../declaration.js';

export const read: Declaration = {
  kind: 'read',
  /** `probe` after the value says how it was measured. */
  forms: { read: { en: ['read', 'reading', 'temp', 'meas'], de: ['messen', 'messung', 'gemessen', 'wert', 'temperatur'], es: ['medir', 'medida', 'lectura', 'temperatura'] }, probe: { en: ['probe'], de: ['fühler'], es: ['sonda'] },
    /** The last reading was mistyped. */
    sorry: { en: ['sorry', 'sory', 'i mean', 'i meant'], de: ['ich meine', 'ich meinte'], es: ['perdón', 'quise decir'] } },
  takes: ['job', 'joint', 'temperature', 'method', 'time'],
  usage: 'read JOB 58 [tape | contact | bare] [time]',
  example: ({ job }) => `read ${job} 58 tape`,
  build: ({ job, joint, temperature, method, forms, when }) => {
    if (temperature === null) return missing('a-temperature', '58', '58C');
    // It corrects a moment that stands in the book already.
    const corrects = forms.has('sorry') && job === null && !when.stated;
    return built({ kind: 'read', job, joint, value: temperature, method, ...(corrects ? { corrects: true } : {}), when });
  },
};
