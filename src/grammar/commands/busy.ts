import { built, missing, type Declaration } from '../declaration.js';

export const busy: Declaration = {
  kind: 'busy',
  forms: { busy: { en: ['busy'], de: ['beschäftigt'], es: ['ocupado', 'ocupada'] } },
  takes: ['length'],
  usage: 'busy 30 min',
  example: () => 'busy 30 min',
  build: ({ length }) => (length === null ? missing('how-long', '30 min') : built({ kind: 'busy', minutes: length })),
};
