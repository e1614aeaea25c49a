import { built, type Declaration } from '../declaration.js';

export const paste: Declaration = {
  kind: 'paste',
  forms: { paste: { en: ['paste', 'paste on', 'glue on', 'bead', 'bead on', 'spread'], de: ['kleber drauf', 'kleber', 'aufgetragen', 'auftragen', 'raupe'], es: ['adhesivo puesto', 'adhesivo', 'cordón', 'pegamento'] } },
  takes: ['job', 'joint', 'card', 'depth', 'time'],
  usage: 'paste JOB CARD [5 mm] [batch 55-B exp 2027-03 opened 2026-11-20] [time]',
  example: ({ job, card }) => `paste ${job} ${card}`,
  build: ({ job, joint, card, depth, when }) => built({ kind: 'paste', job, joint, card, depth, when }),
};
