import { built, type Declaration } from '../declaration.js';

export const moved: Declaration = {
  kind: 'moved',
  forms: { moved: { en: ['moved', 'slid', 'adjusted'], de: ['verschoben', 'gerückt', 'verrutscht'], es: ['movido', 'movida', 'corrido', 'corrida'] } },
  takes: ['job', 'joint', 'time'],
  usage: 'moved JOB [time]',
  example: ({ job }) => `moved ${job}`,
  build: ({ job, joint, when }) => built({ kind: 'moved', job, joint, when }),
};
