import { built, missing, type Declaration } from '../declaration.js';

export const busy: Declaration = {
  kind: 'busy',
  forms: { busy: { en: ['busy'], de: ['beschäftigt'], es: ['ocupado', 'ocupada'] } },
  takes: ['length'],
  usage: 'busy 30 min',
  meaning: 'no posts to me; safety stays',
  example: () => 'busy 30 min',
  build: ({ length }) => (length === null ? missing('how long, from 1 min to 12 h', '30 min') : built({ kind: 'busy', minutes: length })),
};
