import { built, choose, gap, missing, type Declaration } from '../declaration.js';
import { EITHER_HEATER, settingMissing } from '../heater-gaps.js';

export const whatIf: Declaration = {
  kind: 'what-if',
  forms: { asked: { en: ['what if', 'what-if', 'whatif'], de: ['was wenn', 'was wäre wenn', 'was wäre mit'], es: ['y si', 'qué pasa si'] }, bare: { en: ['no lamp', 'no heat', 'no pad', 'air only', 'only air'], de: ['ohne lampe', 'ohne strahler', 'nur luft'], es: ['sin lámpara', 'sin manta', 'solo aire'] } },
  takes: ['job', 'joint', 'temperature', 'air', 'from'],
  usage: 'what if [JOB] [lamp 65 | pad 60 | no lamp] [air 25] [from 14:00]',
  meaning: 'time with other heat',
  example: ({ job }) => `what if ${job} lamp 65`,
  build: ({ job, joint, forms, heaters, heaterWord, offWord, airWord, temperature, air, ahead }) => {
    if (!forms.has('asked')) return gap({ problem: 'the words what if', add: ['what if'], choose: true, place: 'start' });
    if (heaters.size > 1) return choose(EITHER_HEATER);
    const heater = heaters.has('pad') ? 'pad' : 'lamp';
    const unheated = offWord || forms.has('bare');
    if (heaterWord && unheated) return choose(`either ${heater} or no ${heater}`);
    if (!heaterWord && temperature !== null) return gap({ problem: 'the word lamp, pad or air before its temperature', add: ['lamp', 'pad', 'air'], choose: true, place: 'before-temperature' });
    if (heaterWord && temperature === null) return settingMissing(heater);
    if (airWord && air === null) return missing('an air temperature', '25', '25C');
    return built({ kind: 'what-if', job, joint, setting: temperature, heater, unheated, air, from: ahead });
  },
};
