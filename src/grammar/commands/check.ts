import { built, choose, gap, type Declaration } from '../declaration.js';

export const check: Declaration = {
  kind: 'check',
  forms: {
    check: { en: ['check', 'checked'], de: ['prüfen', 'geprüft', 'prüfung'], es: ['comprobar', 'comprobado', 'prueba'] },
    hard: { en: ['hard', 'ok', 'okay', 'yes'], de: ['fest', 'hart', 'ja'], es: ['duro', 'dura', 'vale'] },
    /** Without its accent `si` is also the word if. */
    si: { en: [], de: [], es: ['sí'] },
    soft: { en: ['soft', 'still soft', 'tacky', 'still tacky', 'no'], de: ['weich', 'noch weich', 'klebrig', 'noch klebrig', 'nein'], es: ['blando', 'blanda', 'todavía blando', 'aún blando', 'sigue blando', 'pegajoso', 'no'] },
  },
  takes: ['job', 'joint', 'milestone', 'time'],
  usage: 'check JOB hard, or: check JOB soft',
  meaning: 'your check',
  example: ({ job }) => `hard ${job}`,
  build: ({ job, joint, milestone, forms, when }) => {
    if (forms.has('si') && forms.size > 1) return gap({ problem: 'hard or soft, without if', add: [], choose: false, place: 'end' });
    const hard = forms.has('hard') || forms.has('si');
    if (hard === forms.has('soft')) return choose('hard or soft', ...(hard ? [] : ['hard', 'soft']));
    return built({ kind: 'check', job, joint, milestone, result: hard ? 'hard' : 'soft', when });
  },
};
