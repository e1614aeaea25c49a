import { built, type Declaration } from '../declaration.js';

export const accept: Declaration = {
  kind: 'accept',
  forms: { accept: { en: ['accept', 'accepted', 'i take over'], de: ['annehmen', 'angenommen', 'übernehme', 'ich übernehme'], es: ['acepto', 'aceptar', 'aceptado'] } },
  takes: [],
  usage: 'accept',
  example: () => 'accept',
  build: () => built({ kind: 'accept' }),
};
