import { built, missing, type Declaration } from '../declaration.js';

export const air: Declaration = {
  kind: 'air',
  forms: { air: { en: ['air', 'shop', 'room', 'hall', 'heating off'], de: ['luft', 'halle', 'werkstatt', 'raum', 'heizung aus', 'heizung ist aus'], es: ['aire', 'taller', 'nave', 'calefacción apagada'] } },
  takes: ['temperature', 'humidity', 'time'],
  usage: 'air 19 [rh 55] [time]',
  example: () => 'air 19 rh 55',
  build: ({ temperature, humidity, when }) => {
    if (temperature === null) return missing('a-temperature', '19', '19C');
    return built({ kind: 'air', value: temperature, humidity, when });
  },
};
