import { built, missing, type Declaration } from '../declaration.js';

export const hold: Declaration = {
  kind: 'hold',
  forms: { hold: { en: ['hold', 'stop'], de: ['sperren', 'sperre', 'stopp'], es: ['retener', 'parar'] } },
  takes: ['job', 'joint', 'reason'],
  usage: 'hold JOB reason',
  example: ({ job }) => `hold ${job} your reason`,
  build: ({ job, joint, reason }) => (reason === '' ? missing('a-reason', 'your reason') : built({ kind: 'hold', job, joint, reason })),
};
