import { built, choose, type Declaration } from '../declaration.js';

/** The deeds that are asked for. */
export const DEEDS = ['sand', 'weld', 'move', 'bake', 'fill', 'unclamp'] as const;

/** The plain form of the question; the reader puts the words of other ways to ask in this order first. */
export const may: Declaration = {
  kind: 'may',
  forms: {
    sand: { en: ['can i sand'], de: ['kann ich schleifen'], es: ['puedo lijar'] },
    weld: { en: ['can i weld'], de: ['kann ich schweißen'], es: ['puedo soldar'] },
    move: { en: ['can i move'], de: ['kann ich bewegen'], es: ['puedo mover'] },
    bake: { en: ['can i bake'], de: ['kann ich einbrennen'], es: ['puedo hornear'] },
    fill: { en: ['can i fill'], de: ['kann ich spachteln'], es: ['puedo masillar'] },
    unclamp: { en: ['can i unclamp'], de: ['kann ich lösen'], es: ['puedo soltar'] },
  },
  takes: ['job', 'joint'],
  usage: 'can i sand JOB (weld, move, bake, fill, unclamp)',
  example: ({ job }) => `can i sand ${job}`,
  build: ({ job, joint, forms }) => {
    const [deed, other] = DEEDS.filter((one) => forms.has(one));
    if (deed === undefined || other !== undefined) return choose('one-question');
    return built({ kind: 'may', job, joint, deed });
  },
};
