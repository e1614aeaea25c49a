import type { STANDING_EN } from './standing-en.js';

export const STANDING_ES: Readonly<Record<keyof typeof STANDING_EN, string>> = {
  overridden: '**Excepción**: {list}.',
  'overridden-more': '**Excepción**: {list}; y {more} más.',
  'overridden-one': '{step}, {who} {at}: «{reason}»',
  decided: '**Decidido**: {list}.',
  'decided-more': '**Decidido**: {list}; y {more} más.',
  'decided-one': '{what} sigue, {who} {at}: «{reason}»',
  'decided-short': 'decidido: {who} {at}: «{reason}»',
  held: '{job} **RETENIDO** desde {at} por {who}: «{reason}». Nada sigue hasta que el jefe de taller lo libere: `release {job} motivo`.',
  'held-short': '**RETENIDO** desde {at} por {who}: «{reason}», decide el jefe de taller',
  'overridden-short': 'excepción: {list}',
  'overridden-short-one': '{step} ({who} {at}: «{reason}»)',
  'overridden-short-more': 'excepción: {list} y {more} más',
  'example-procedure': '{name} es un procedimiento de ejemplo, no el método del fabricante del vehículo.',
};
