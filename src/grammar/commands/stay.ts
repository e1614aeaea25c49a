import { built, type Declaration } from '../declaration.js';

export const stay: Declaration = {
  kind: 'stay',
  forms: { stay: { en: ['stay', 'i stay', 'staying', 'im here', 'i am here', 'someone here', 'someone stays', 'somebody here'] } },
  takes: ['job', 'joint'],
  usage: 'stay [JOB]',
  meaning: 'I stay with the lamp',
  example: ({ job }) => `stay ${job}`,
  build: ({ job, joint }) => built({ kind: 'stay', job, joint }),
};
