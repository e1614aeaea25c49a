import { built, type Declaration } from '../declaration.js';

export const when: Declaration = {
  kind: 'when',
  forms: { when: { en: ['when'], de: ['wann'], es: ['cuándo'] } },
  takes: ['job', 'joint'],
  usage: 'when [JOB]',
  example: ({ job }) => `when ${job}`,
  build: ({ job, joint }) => built({ kind: 'when', job, joint }),
};
