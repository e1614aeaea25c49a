import { built, choose, type Declaration } from '../declaration.js';
import { settingMissing } from '../heater-gaps.js';

export const lamp = {
  kind: 'lamp',
  forms: {
    lamp: { en: ['lamp', 'heat'], de: ['lampe', 'strahler'], es: ['lámpara', 'foco'] },
    pad: { en: ['pad', 'heat pad', 'heating pad'], de: ['heizmatte', 'heizkissen'], es: ['manta', 'manta térmica'] },
    up: { en: ['up', 'turn up', 'turned up'], de: ['hoch', 'hochgestellt', 'hochstellen', 'höher'], es: ['subir', 'subida'] },
  },
  takes: ['job', 'joint', 'lamp', 'temperature', 'time'],
  usage: 'lamp JOB 65 [LAMP] [time], or: pad JOB 60 [PAD], or: up JOB',
  example: ({ job }) => `lamp ${job} 65`,
  build: ({ job, joint, lamp: name, heaters, forms, temperature, when }) => {
    if (heaters.size > 1) return choose('lamp-or-pad');
    const heater = heaters.has('pad') ? 'pad' : 'lamp';
    // A pad has no stages to go up to.
    if (temperature === null && (heater === 'pad' || !forms.has('up'))) return settingMissing(heater);
    return built({ kind: 'lamp', job, joint, setting: temperature, heater, lamp: name, when });
  },
} as const satisfies Declaration;
