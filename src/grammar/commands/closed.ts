import { built, type Declaration } from '../declaration.js';

export const closed: Declaration = {
  kind: 'closed',
  forms: { closed: { en: ['closed', 'shut', 'set', 'clamped'], de: ['zu', 'geschlossen', 'gefügt', 'gespannt'], es: ['cerrado', 'cerrada', 'montado', 'montada'] } },
  takes: ['job', 'joint', 'card', 'depth', 'time'],
  usage: 'closed JOB [CARD] [5 mm] [time]',
  example: ({ job }) => `closed ${job} 20 min ago`,
  build: ({ job, joint, card, depth, when }) => built({ kind: 'closed', job, joint, card, depth, when }),
};
