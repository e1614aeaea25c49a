import { built, choose, gap, type Built, type Declaration, type Slots } from '../declaration.js';

export const check: Declaration = {
  kind: 'check',
  forms: {
    check: { en: ['check', 'checked'], de: ['prüfen', 'geprüft', 'prüfung'], es: ['comprobar', 'comprobado', 'prueba'] },
    hard: { en: ['hard'], de: ['fest', 'hart'], es: ['duro', 'dura'] },
    /** Alone it answers whatever was asked. */
    ok: { en: ['ok', 'okay', 'yes'], de: ['ja'], es: ['vale'] },
    /** Without its accent `si` is also the word if. */
    si: { en: [], de: [], es: ['sí'] },
    /** Nothing smoulders: about a fire watch, and nothing else. */
    clear: { en: ['clear', 'all clear', 'cold', 'all cold', 'no smoke'], de: ['kalt', 'alles kalt'], es: ['frío', 'fría', 'todo frío'] },
    soft: { en: ['soft', 'still soft', 'tacky', 'still tacky', 'no'], de: ['weich', 'noch weich', 'klebrig', 'noch klebrig', 'nein'], es: ['blando', 'blanda', 'todavía blando', 'aún blando', 'sigue blando', 'pegajoso', 'no'] },
  },
  takes: ['job', 'joint', 'milestone', 'time'],
  usage: 'check JOB hard, or: check JOB soft [lamp]',
  example: ({ job }) => `hard ${job}`,
  build: ({ job, joint, milestone, forms, heaterWord, when }) => {
    if (forms.has('si') && forms.size > 1) return gap({ problem: 'hard-or-soft-without-if', add: [], choose: false, place: 'end' });
    if (forms.has('clear')) return clear(job, joint, milestone, forms, when);
    const yes = forms.has('ok') || forms.has('si');
    const hard = forms.has('hard') || yes;
    if (hard === forms.has('soft')) return choose('hard-or-soft', ...(hard ? [] : ['hard', 'soft']));
    const bare = yes && forms.size === 1 && job === null && joint === null && milestone === null && !when.stated;
    return built({ kind: 'check', job, joint, milestone, result: hard ? 'hard' : 'soft', ...(bare ? { yes: true } : {}), ...(heaterWord ? { lampWanted: true } : {}), when });
  },
};

/** No strength is cleared, and no watch is hard or soft. */
function clear(job: Slots['job'], joint: Slots['joint'], milestone: Slots['milestone'], forms: Slots['forms'], when: Slots['when']): Built {
  const only = [...forms].every((form) => form === 'clear' || form === 'ok' || form === 'si') && (milestone === null || milestone === 'fire-watch');
  return only ? built({ kind: 'check', job, joint, milestone: 'fire-watch', result: 'hard', when }) : choose('hard-or-soft');
}
