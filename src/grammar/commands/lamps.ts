import { built, type Declaration } from '../declaration.js';

export const lamps: Declaration = {
  kind: 'lamps',
  forms: { lamps: { en: ['lamps', 'all lamps'], de: ['lampen'], es: ['lámparas'] } },
  takes: [],
  usage: 'lamps',
  example: () => 'lamps',
  build: () => built({ kind: 'lamps' }),
};
