import { built, gap, missing, type Declaration } from '../declaration.js';

export const cure: Declaration = {
  kind: 'cure',
  forms: { cure: { en: ['cure', 'start', 'started', 'go'] } },
  takes: ['job', 'joint', 'card', 'lamp', 'temperature', 'time'],
  usage: 'cure JOB CARD [lamp 35] [LAMP] [time]',
  meaning: 'set, lamp on',
  example: ({ job, card }) => `cure ${job} ${card} lamp 35`,
  build: ({ job, joint, card, lamp, lampWord, temperature, when }) => {
    if (lampWord && temperature === null) return missing('a lamp temperature', '35', '35C');
    if (!lampWord && temperature !== null) return gap({ problem: 'the word lamp before its temperature', add: ['lamp'], choose: true, place: 'before-temperature' });
    return built({ kind: 'cure', job, joint, card, setting: temperature, lamp, when });
  },
};
