import { built, type Declaration } from '../declaration.js';

export const weld: Declaration = {
  kind: 'weld',
  forms: { weld: { en: ['weld', 'welding'], de: ['schweißen', 'schweiße'], es: ['soldar', 'soldando'] } },
  takes: ['job', 'joint', 'time'],
  usage: 'weld JOB [j2] [time]',
  example: ({ job }) => `weld ${job} j2`,
  build: ({ job, joint, when }) => built({ kind: 'weld', job, joint, when }),
};
