import { built, choose, gap, type Declaration } from '../declaration.js';

export const check: Declaration = {
  kind: 'check',
  forms: {
    check: { en: ['check', 'checked'], de: ['prüfen', 'geprüft', 'prüfung'], es: ['comprobar', 'comprobado', 'prueba'] },
    hard: { en: ['hard'], de: ['fest', 'hart'], es: ['duro', 'dura'] },
    /** Alone it answers whatever was asked. */
    ok: { en: ['ok', 'okay', 'yes'], de: ['ja'], es: ['vale'] },
    /** Without its accent `si` is also the word if. */
    si: { en: [], de: [], es: ['sí'] },
    soft: { en: ['soft', 'still soft', 'tacky', 'still tacky', 'no'], de: ['weich', 'noch weich', 'klebrig', 'noch klebrig', 'nein'], es: ['blando', 'blanda', 'todavía blando', 'aún blando', 'sigue blando', 'pegajoso', 'no'] },
  },
  takes: ['job', 'joint', 'milestone', 'time'],
  usage: 'check JOB hard, or: check JOB soft [lamp]',
  example: ({ job }) => `hard ${job}`,
  build: ({ job, joint, milestone, forms, heaterWord, when }) => {
    if (forms.has('si') && forms.size > 1) return gap({ problem: 'hard-or-soft-without-if', add: [], choose: false, place: 'end' });
    const yes = forms.has('ok') || forms.has('si');
    const hard = forms.has('hard') || yes;
    if (hard === forms.has('soft')) return choose('hard-or-soft', ...(hard ? [] : ['hard', 'soft']));
    const bare = yes && forms.size === 1 && job === null && joint === null && milestone === null && !when.stated;
    return built({ kind: 'check', job, joint, milestone, result: hard ? 'hard' : 'soft', ...(bare ? { yes: true } : {}), ...(heaterWord ? { lampWanted: true } : {}), when });
  },
};
