import { built, choose, type Declaration } from '../declaration.js';

export const buildUp: Declaration = {
  kind: 'build-up',
  forms: {
    metal: { en: ['metal', 'build-up', 'build up'], de: ['blech', 'aufbau'], es: ['chapa', 'montaje'] },
    thin: { en: ['thin', 'thin skin', 'one sheet'], de: ['dünn', 'dünnblech', 'ein blech'], es: ['fina', 'fino', 'una chapa'] },
    flange: { en: ['flange', 'two sheets', '2 sheets', 'two sheets with flange', 'thick'], de: ['flansch', 'zwei bleche', '2 bleche', 'dick'], es: ['pestaña', 'dos chapas', '2 chapas', 'gruesa', 'grueso'] },
  },
  takes: ['job', 'joint'],
  usage: 'metal JOB thin, or: metal JOB flange',
  example: ({ job }) => `metal ${job} thin`,
  build: ({ job, joint, forms }) => {
    const thin = forms.has('thin');
    if (thin === forms.has('flange')) return choose('thin-or-flange', ...(thin ? [] : ['thin', 'flange']));
    return built({ kind: 'build-up', job, joint, buildUp: thin ? 'thin-skin' : 'two-sheets-with-flange' });
  },
};
