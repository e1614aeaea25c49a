import { airSaid } from '../air-said.js';
import { built, type Declaration } from '../declaration.js';

export const paste: Declaration = {
  kind: 'paste',
  forms: {
    paste: { en: ['paste', 'paste on', 'glue on', 'bead', 'bead on', 'spread'], de: ['kleber drauf', 'kleber', 'aufgetragen', 'auftragen', 'raupe'], es: ['adhesivo puesto', 'adhesivo', 'cordón', 'pegamento'] },
    /** The clock of the first one goes on. */
    again: { en: ['second cartridge', 'next cartridge', 'new cartridge', 'another cartridge', 'second mix'], de: ['zweite kartusche', 'neue kartusche', 'nächste kartusche'], es: ['segundo cartucho', 'otro cartucho', 'cartucho nuevo'] },
  },
  takes: ['job', 'joint', 'card', 'depth', 'air', 'humidity', 'time'],
  usage: 'paste JOB CARD [5 mm] [batch 55-B exp 2027-03 opened 2026-11-20] [air 19] [time]',
  example: ({ job, card }) => `paste ${job} ${card}`,
  build: (slots) => {
    const { job, joint, card, depth, forms, when } = slots;
    const said = airSaid(slots);
    return said.ok ? built({ kind: 'paste', job, joint, card, depth, ...said.air, ...(forms.has('again') ? { again: true } : {}), when }) : said.gap;
  },
};
