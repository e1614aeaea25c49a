import { built, type Declaration } from '../declaration.js';

export const next: Declaration = {
  kind: 'next',
  forms: { next: { en: ['next', 'whats next', 'what is next', 'wats next'], de: ['was kommt', 'was kommt als nächstes', 'nächster schritt'], es: ['qué sigue', 'siguiente'] } },
  takes: ['job', 'joint'],
  usage: 'next [JOB]',
  example: ({ job }) => `next ${job}`,
  build: ({ job, joint }) => built({ kind: 'next', job, joint }),
};
