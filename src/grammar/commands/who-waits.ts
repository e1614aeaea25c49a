import { built, type Declaration } from '../declaration.js';

export const whoWaits: Declaration = {
  kind: 'who-waits',
  forms: { list: { en: ['who waits', 'who is waiting', 'whos waiting', 'waiting', 'list', 'whats open', 'what is open', 'wats open'], de: ['wer wartet', 'liste', 'was ist offen', 'was offen'], es: ['quién espera', 'lista', 'qué espera'] } },
  takes: [],
  usage: 'who waits',
  example: () => 'who waits',
  build: () => built({ kind: 'who-waits' }),
};
