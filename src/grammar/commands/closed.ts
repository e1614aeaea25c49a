import { airSaid } from '../air-said.js';
import { built, type Declaration } from '../declaration.js';

export const closed: Declaration = {
  kind: 'closed',
  forms: { closed: { en: ['closed', 'shut', 'set', 'clamped'], de: ['zu', 'geschlossen', 'gefügt', 'gespannt'], es: ['cerrado', 'cerrada', 'montado', 'montada'] } },
  takes: ['job', 'joint', 'card', 'depth', 'air', 'humidity', 'time'],
  usage: 'closed JOB [CARD] [5 mm] [air 19] [time]',
  example: ({ job }) => `closed ${job} 20 min ago`,
  build: (slots) => {
    const { job, joint, card, depth, when } = slots;
    const said = airSaid(slots);
    return said.ok ? built({ kind: 'closed', job, joint, card, depth, ...said.air, when }) : said.gap;
  },
};
