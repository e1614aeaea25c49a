import { airSaid } from '../air-said.js';
import { built, choose, gap, missing, type Declaration } from '../declaration.js';
import { settingMissing } from '../heater-gaps.js';

export const cure: Declaration = {
  kind: 'cure',
  forms: { cure: { en: ['cure'], de: ['härten', 'aushärten'], es: ['curar'] }, start: { en: ['start'], de: ['start', 'starten'], es: ['iniciar', 'inicio'] }, begun: { en: ['started', 'go'], de: ['gestartet'], es: ['iniciado'] } },
  takes: ['job', 'joint', 'card', 'depth', 'lamp', 'temperature', 'air', 'humidity', 'time'],
  usage: 'cure JOB CARD [5 mm] [lamp 35 | pad 60] [LAMP] [air 19] [time]',
  example: ({ job, card }) => `cure ${job} ${card} lamp 35`,
  build: (slots) => {
    const { job, joint, card, depth, lamp, heaters, heaterWord, temperature, when } = slots;
    if (heaters.size > 1) return choose('lamp-or-pad');
    const heater = heaters.has('pad') ? 'pad' : 'lamp';
    if (heaterWord && temperature === null) return heater === 'pad' ? settingMissing(heater) : missing('lamp-temperature', '35', '35C');
    if (!heaterWord && temperature !== null) return gap({ problem: `word-${heater}-before`, add: [heater], choose: true, place: 'before-temperature' });
    const said = airSaid(slots);
    return said.ok ? built({ kind: 'cure', job, joint, card, depth, setting: temperature, heater, lamp, ...said.air, when }) : said.gap;
  },
};
