import { built, type Declaration } from '../declaration.js';

export const sign: Declaration = {
  kind: 'sign',
  forms: { sign: { en: ['sign', 'sign off'], de: ['unterschreiben', 'abzeichnen', 'unterschrift'], es: ['firmar', 'firma'] } },
  takes: ['job', 'joint', 'reason'],
  usage: 'sign JOB [STEP]',
  example: ({ job }) => `sign ${job} dry-fit`,
  build: ({ job, joint, reason }) => built({ kind: 'sign', job, joint, step: reason === '' ? null : reason }),
};
