import { built, missing, type Declaration } from '../declaration.js';

/** In place of a step: the one that is next. */
const NEXT_STEP = '-';

export const override: Declaration = {
  kind: 'override',
  forms: { override: { en: ['override'], de: ['übersteuern'], es: ['forzar'] } },
  takes: ['job', 'joint', 'reason'],
  usage: 'override JOB STEP reason',
  example: ({ job }) => `override ${job} clean your reason`,
  build: ({ job, joint, reason }) => {
    const [step = '', ...others] = reason.split(' ');
    if (step === '') return missing('step-and-reason', 'clean your reason');
    if (others.length === 0) return missing('a-reason', 'your reason');
    return built({ kind: 'override', job, joint, step: step === NEXT_STEP ? null : step, reason: others.join(' ') });
  },
};
