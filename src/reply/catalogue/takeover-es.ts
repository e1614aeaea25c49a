import type { TAKEOVER_EN } from './takeover-en.js';

export const TAKEOVER_ES: Readonly<Record<keyof typeof TAKEOVER_EN, string>> = {
  'shift-ends': '**Tu turno acaba {end}**, sigue en marcha: {jobs}. **¿Quién toma el relevo?**',
  'stay-yours': 'Siguen siendo tuyos hasta que alguien acepte.',
  'not-all': 'No todos: `handover {taker} except {job}`.',
  'some-name': 'NOMBRE',
  nobody: '**Nadie ha tomado el relevo** de {owners}, fin de turno {end}: {jobs}.',
  'comes-to-you': 'Lo que toque te llega a ti.',
  'one-by-one': 'Pásalos uno a uno: `hand {job} to NOMBRE`.',
  'jobs-more': '{jobs} y {more} más',
};
