import { built, missing, type Declaration } from '../declaration.js';
import { toWhom } from '../to-whom.js';

export const hand: Declaration = {
  kind: 'hand',
  forms: { hand: { en: ['hand', 'give'], de: ['abgeben', 'übergeben'], es: ['entregar', 'pasar'] } },
  takes: ['job', 'joint', 'reason'],
  usage: 'hand JOB to NAME, or: NAME do JOB',
  example: ({ job }) => `hand ${job} to Sam`,
  build: ({ job, joint, reason }) => {
    const to = toWhom(reason);
    return to === null ? missing('a-name', 'to Sam') : built({ kind: 'hand', job, joint, to });
  },
};
