import { built, type Declaration } from '../declaration.js';

export const scrap: Declaration = {
  kind: 'scrap',
  forms: { scrap: { en: ['scrap', 'bin it'], de: ['verwerfen'], es: ['anular'] } },
  takes: ['job', 'joint', 'reason'],
  usage: 'scrap JOB [reason]',
  example: ({ job }) => `scrap ${job}`,
  build: ({ job, joint, reason }) => built({ kind: 'scrap', job, joint, reason }),
};
