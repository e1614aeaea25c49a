import { built, choose, gap, missing, type Declaration } from '../declaration.js';
import { settingMissing } from '../heater-gaps.js';

export const whatIf: Declaration = {
  kind: 'what-if',
  forms: { asked: { en: ['what if', 'what-if', 'whatif'], de: ['was wenn', 'was wäre wenn', 'was wäre mit'], es: ['y si', 'qué pasa si'] }, bare: { en: ['no lamp', 'no heat', 'no pad', 'air only', 'only air'], de: ['ohne lampe', 'ohne strahler', 'nur luft'], es: ['sin lámpara', 'sin manta', 'solo aire'] } },
  takes: ['job', 'joint', 'temperature', 'air', 'from'],
  usage: 'what if [JOB] [lamp 65 | pad 60 | no lamp] [air 25] [from 14:00]',
  example: ({ job }) => `what if ${job} lamp 65`,
  build: ({ job, joint, forms, heaters, heaterWord, offWord, airWord, temperature, air, ahead }) => {
    if (!forms.has('asked')) return gap({ problem: 'words-what-if', add: ['what if'], choose: true, place: 'start' });
    if (heaters.size > 1) return choose('lamp-or-pad');
    const heater = heaters.has('pad') ? 'pad' : 'lamp';
    const unheated = offWord || forms.has('bare');
    if (heaterWord && unheated) return choose(heater === 'pad' ? 'pad-or-no-pad' : 'lamp-or-no-lamp');
    if (!heaterWord && temperature !== null) return gap({ problem: 'word-lamp-pad-air-before', add: ['lamp', 'pad', 'air'], choose: true, place: 'before-temperature' });
    if (heaterWord && temperature === null) return settingMissing(heater);
    if (airWord && air === null) return missing('air-temperature', '25', '25C');
    return built({ kind: 'what-if', job, joint, setting: temperature, heater, unheated, air, from: ahead });
  },
};
