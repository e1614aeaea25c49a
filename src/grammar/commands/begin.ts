import { built, type Declaration } from '../declaration.js';

export const begin: Declaration = {
  kind: 'begin',
  forms: { begin: { en: ['begin', 'begin procedure'], de: ['beginnen', 'beginn'], es: ['comenzar', 'empezar'] } },
  takes: ['job', 'joint', 'reason'],
  usage: 'begin JOB PROCEDURE',
  example: ({ job }) => `begin ${job}`,
  build: ({ job, joint, procedure, reason }) => built({ kind: 'begin', job, joint, procedure: reason === '' ? null : (procedure ?? reason) }),
};
