import { built, type Declaration } from '../declaration.js';

export const why: Declaration = {
  kind: 'why',
  forms: { why: { en: ['why', 'explain'], de: ['warum', 'wieso'], es: ['por qué'] } },
  takes: ['job', 'joint'],
  usage: 'why [JOB]',
  example: ({ job }) => `why ${job}`,
  build: ({ job, joint }) => built({ kind: 'why', job, joint }),
};
