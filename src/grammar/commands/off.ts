import { built, choose, type Declaration } from '../declaration.js';

export const off: Declaration = {
  kind: 'off',
  forms: {
    off: { en: ['off', 'tripped', 'unplugged', 'lamp off', 'pad off'], de: ['aus', 'ausgefallen', 'ausgesteckt', 'lampe aus', 'strahler aus'], es: ['apagada', 'apagado', 'desenchufada', 'lámpara apagada', 'lámpara fuera'] },
    /** On, and not over all of the joint: what lies beside it is the cure. */
    part: { en: ['covers half', 'covers only half', 'covers half panel', 'covers only half panel', 'covers only part', 'half covered', 'only half covered', 'not all covered'], de: ['deckt nur halb', 'halb abgedeckt', 'nur halb abgedeckt', 'nicht ganz abgedeckt'], es: ['cubre mitad', 'cubre solo mitad', 'no cubre todo'] },
    /** Seen off, without a word about when it went off. */
    found: { en: ['was off', 'lamp was off', 'pad was off'], de: ['war aus', 'lampe war aus', 'strahler war aus'], es: ['estaba apagada', 'lámpara estaba apagada'] },
    unknown: { en: ['not sure', 'not sure when', 'not sure since when', 'dont know', 'dont know when', 'dont know since when', 'do not know when', 'unknown', 'since unknown'], de: ['unklar', 'unklar seit wann', 'weiß nicht', 'weiß nicht wann', 'weiß nicht seit wann', 'keine ahnung'], es: ['no sé', 'no sé cuándo', 'no lo sé', 'no sé desde cuándo'] },
  },
  takes: ['job', 'joint', 'lamp', 'time'],
  usage: "off JOB [time], or: off JOB don't know when",
  example: ({ job }) => `off ${job} 10 min ago`,
  build: ({ job, joint, lamp, forms, when }) => {
    if (when.stated && forms.has('unknown')) return choose('time-or-unknown');
    const unknown = forms.has('unknown') || (forms.has('found') && !when.stated);
    return built({ kind: 'off', job, joint, lamp, since: unknown ? 'unknown' : 'stated', ...(forms.has('part') ? { part: true } : {}), when });
  },
};
