import { built, type Declaration } from '../declaration.js';

export const help: Declaration = {
  kind: 'help',
  forms: { help: { en: ['help', '?'], de: ['hilfe'], es: ['ayuda'] } },
  takes: [],
  usage: 'help',
  example: () => 'help',
  build: () => built({ kind: 'help' }),
};
