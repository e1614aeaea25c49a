import { built, missing, type Declaration } from '../declaration.js';
import { toWhom } from '../to-whom.js';

export const turnAway: Declaration = {
  kind: 'turn-away',
  forms: { refuse: { en: ['refuse', 'turn away'], de: ['abweisen'], es: ['rechazar'] } },
  takes: ['reason'],
  usage: 'refuse NAME',
  example: () => 'refuse Sam',
  build: ({ reason }) => {
    const person = toWhom(reason);
    return person === null ? missing('a-name', 'Sam') : built({ kind: 'turn-away', person });
  },
};
