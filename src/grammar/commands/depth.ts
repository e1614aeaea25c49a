import { built, missing, type Declaration } from '../declaration.js';

export const depth: Declaration = {
  kind: 'depth',
  forms: { depth: { en: ['depth', 'deep', 'bead depth'], de: ['tiefe', 'tief'], es: ['profundidad', 'profundo'] } },
  takes: ['job', 'joint', 'depth', 'figure'],
  usage: 'depth JOB 5 mm',
  example: ({ job }) => `depth ${job} 5 mm`,
  build: ({ job, joint, depth: millimetres }) => (millimetres === null ? missing('the-depth', '5 mm') : built({ kind: 'depth', job, joint, millimetres })),
};
