import { built, missing, type Declaration } from '../declaration.js';

export const latestStart: Declaration = {
  kind: 'latest-start',
  forms: { asked: { en: ['when start', 'when to start', 'when do i start', 'when must i start', 'latest start', 'latest-start', 'start latest', 'start by'], de: ['wann start', 'wann starten', 'wann anfangen', 'wann muss ich starten', 'spätester start'], es: ['cuándo empezar', 'cuándo iniciar', 'cuándo inicio', 'inicio más tarde'] } },
  takes: ['job', 'joint', 'card', 'milestone', 'depth', 'ready'],
  usage: 'when start JOB [CARD] [handling | full] [5 mm] ready fri 16:00',
  example: ({ job, card }) => `when start ${job} ${card} ready fri 16:00`,
  build: ({ job, joint, card, milestone, depth, ahead }) => {
    if (ahead === null) return missing('ready-time', 'ready fri 16:00');
    return built({ kind: 'latest-start', job, joint, card, milestone, depth, readyBy: ahead });
  },
};
