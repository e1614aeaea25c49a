import { built, missing, type Declaration } from '../declaration.js';

export const release: Declaration = {
  kind: 'release',
  forms: { release: { en: ['release'], de: ['freigeben', 'freigabe'], es: ['liberar'] } },
  takes: ['job', 'joint', 'reason'],
  usage: 'release JOB reason',
  example: ({ job }) => `release ${job} your reason`,
  build: ({ job, joint, reason }) => (reason === '' ? missing('a-reason', 'your reason') : built({ kind: 'release', job, joint, reason })),
};
