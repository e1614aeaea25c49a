import { built, type Declaration } from '../declaration.js';

export const later: Declaration = {
  kind: 'later',
  forms: { later: { en: ['later'], de: ['später'], es: ['luego', 'más tarde'] } },
  takes: ['job', 'joint'],
  usage: 'later [JOB]',
  example: ({ job }) => `later ${job}`,
  build: ({ job, joint }) => built({ kind: 'later', job, joint }),
};
