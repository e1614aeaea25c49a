import { built, missing, type Declaration } from '../declaration.js';

export const lamp = {
  kind: 'lamp',
  forms: { lamp: { en: ['lamp', 'heat'] }, up: { en: ['up', 'turn up', 'turned up'] } },
  takes: ['job', 'joint', 'lamp', 'temperature', 'time'],
  usage: 'lamp JOB 65 [LAMP] [time], or: up JOB',
  meaning: 'lamp on, turned',
  example: ({ job }) => `lamp ${job} 65`,
  build: ({ job, joint, lamp: name, forms, temperature, when }) => {
    if (temperature === null && !forms.has('up')) return missing('a lamp temperature', '65', '65C');
    return built({ kind: 'lamp', job, joint, setting: temperature, lamp: name, when });
  },
} as const satisfies Declaration;
