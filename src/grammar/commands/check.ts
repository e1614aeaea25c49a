import { built, choose, type Declaration } from '../declaration.js';

export const check: Declaration = {
  kind: 'check',
  forms: { check: { en: ['check', 'checked'] }, hard: { en: ['hard', 'ok', 'yes'] }, soft: { en: ['soft', 'still soft', 'tacky', 'still tacky', 'no'] } },
  takes: ['job', 'joint', 'milestone', 'time'],
  usage: 'check JOB hard, or: check JOB soft',
  meaning: 'your check',
  example: ({ job }) => `hard ${job}`,
  build: ({ job, joint, milestone, forms, when }) => {
    const hard = forms.has('hard');
    if (hard === forms.has('soft')) return choose('hard or soft', ...(hard ? [] : ['hard', 'soft']));
    return built({ kind: 'check', job, joint, milestone, result: hard ? 'hard' : 'soft', when });
  },
};
