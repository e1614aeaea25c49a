import { built, type Declaration } from '../declaration.js';

export const done: Declaration = {
  kind: 'done',
  forms: { done: { en: ['done', 'finished'], de: ['fertig', 'erledigt', 'vorbei'], es: ['hecho', 'hecha', 'terminado', 'terminada'] } },
  takes: ['job', 'joint', 'reason', 'time'],
  usage: 'done JOB [STEP] [time], or: JOB STEP done',
  example: ({ job }) => `done ${job} weld`,
  build: ({ job, joint, reason, when }) => built({ kind: 'done', job, joint, step: reason === '' ? null : reason, when }),
};
