import { built, type Declaration } from '../declaration.js';

export const smoke: Declaration = {
  kind: 'smoke',
  forms: {
    smoke: { en: ['smoke', 'smoking', 'smoulders', 'smouldering', 'smells', 'it smells', 'smells burnt'], de: ['rauch', 'raucht', 'qualm', 'qualmt', 'riecht', 'riecht verbrannt', 'stinkt', 'brandgeruch'], es: ['humo', 'humea', 'huele', 'huele a quemado'] },
    fire: { en: ['fire', 'on fire', 'burns', 'burning', 'flames'], de: ['feuer', 'brand', 'brennt', 'flammen'], es: ['fuego', 'incendio', 'arde', 'se quema', 'llamas'] },
  },
  takes: ['job', 'joint'],
  usage: 'smoke [JOB]',
  example: ({ job }) => `smoke ${job}`,
  build: ({ job, joint }) => built({ kind: 'smoke', job, joint }),
};
