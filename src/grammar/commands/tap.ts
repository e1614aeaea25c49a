import { built, gap, missing, type Declaration } from '../declaration.js';

/** `purge 2`: taps are counted from one where people see them. */
const STEP_AND_TAP = /^(.*\S) +([1-9]\d?)$/;

export const tap: Declaration = {
  kind: 'tap',
  forms: { tap: { en: ['tap', 'tick'], de: ['abhaken'], es: ['marcar'] } },
  takes: ['job', 'joint', 'reason'],
  usage: 'tap JOB STEP NUMBER',
  example: ({ job }) => `tap ${job} purge 1`,
  build: ({ job, joint, reason }) => {
    const [, step, number] = STEP_AND_TAP.exec(reason) ?? [];
    if (step !== undefined) return built({ kind: 'tap', job, joint, step, tap: Number(number) - 1 });
    if (reason === '' || /^\d+$/.test(reason)) return gap({ problem: 'step-and-point', add: ['purge 1'], choose: false, place: 'end' });
    return missing('number-of-point', '1');
  },
};
