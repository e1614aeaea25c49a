import { built, type Declaration } from '../declaration.js';

export const on: Declaration = {
  kind: 'on',
  forms: { on: { en: ['on', 'back', 'back on', 'on again', 'still on', 'lamp on', 'pad on'], de: ['an', 'ein', 'wieder an', 'noch an', 'lampe an', 'strahler an'], es: ['encendida', 'encendido', 'otra vez encendida', 'sigue encendida', 'lámpara encendida'] } },
  takes: ['job', 'joint', 'lamp', 'time'],
  usage: 'on JOB [time]',
  example: ({ job }) => `on ${job}`,
  build: ({ job, joint, lamp, when }) => built({ kind: 'on', job, joint, lamp, when }),
};
