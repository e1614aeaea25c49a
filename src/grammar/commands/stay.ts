import { built, type Declaration } from '../declaration.js';

export const stay: Declaration = {
  kind: 'stay',
  forms: { stay: { en: ['stay', 'i stay', 'staying', 'im here', 'i am here', 'someone here', 'someone stays', 'somebody here'], de: ['ich bleibe', 'bleibe', 'bin da', 'ich bin da', 'bin hier', 'jemand da'], es: ['me quedo', 'estoy aquí', 'alguien aquí'] } },
  takes: ['job', 'joint'],
  usage: 'stay [JOB]',
  example: ({ job }) => `stay ${job}`,
  build: ({ job, joint }) => built({ kind: 'stay', job, joint }),
};
