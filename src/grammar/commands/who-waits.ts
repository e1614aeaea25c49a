import { built, type Declaration } from '../declaration.js';

export const whoWaits: Declaration = {
  kind: 'who-waits',
  forms: { list: { en: ['who waits', 'who is waiting', 'whos waiting', 'waiting', 'list', 'whats open', 'what is open', 'wats open'] } },
  takes: [],
  usage: 'who waits',
  meaning: 'every car that waits, the worst first',
  example: () => 'who waits',
  build: () => built({ kind: 'who-waits' }),
};
