import { built, type Declaration } from '../declaration.js';

export const stay: Declaration = {
  kind: 'stay',
  forms: {
    stay: { en: ['stay', 'i stay', 'staying', 'someone stays'], de: ['ich bleibe', 'bleibe'], es: ['me quedo'] },
    here: { en: ['im here', 'i am here', 'someone here', 'somebody here'], de: ['bin da', 'ich bin da', 'bin hier', 'jemand da'], es: ['estoy aquí', 'alguien aquí'] },
  },
  takes: ['job', 'joint'],
  usage: 'stay [JOB]',
  example: ({ job }) => `stay ${job}`,
  build: ({ job, joint, forms }) => built({ kind: 'stay', job, joint, ...(forms.has('here') ? { here: true } : {}) }),
};
