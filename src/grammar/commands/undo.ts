import { built, type Declaration } from '../declaration.js';

export const undo: Declaration = {
  kind: 'undo',
  forms: { undo: { en: ['undo'], de: ['rückgängig', 'zurück'], es: ['deshacer'] } },
  takes: ['entry'],
  usage: 'undo [ENTRY]',
  example: () => 'undo',
  build: ({ entry }) => built({ kind: 'undo', entry }),
};
