import { built, gap, type Declaration } from '../declaration.js';

export const wrongCard: Declaration = {
  kind: 'wrong-card',
  /** `not`: the words `P2 not P1`, put together by the reader. */
  forms: { card: { en: ['card', 'wrong card', 'wrong-card'], de: ['karte', 'falsche karte'], es: ['ficha', 'ficha equivocada', 'tarjeta', 'tarjeta equivocada'] } },
  takes: ['job', 'joint', 'card'],
  usage: 'card JOB CARD, or: JOB is CARD not CARD',
  example: ({ job, card }) => `card ${job} ${card}`,
  build: ({ job, joint, card }) => (card === null ? gap({ problem: 'a-card', add: 'each card', choose: true, place: 'end' }) : built({ kind: 'wrong-card', job, joint, card })),
};
