import type { CARTRIDGE_EN } from './cartridge-en.js';

export const CARTRIDGE_ES: Readonly<Record<keyof typeof CARTRIDGE_EN, string>> = {
  batch: 'lote {batch}',
  expires: 'caduca {text}',
  opened: 'abierto {text}',
  'past-expiry': 'caducó {text}',
  'open-too-long': 'abierto {text}, se {days, plural, one {permite # día} other {permiten # días}}',
  'bad-batch': 'lote {batch} {faults}',
  'bad-cartridge': 'cartucho {faults}',
  held: '**{title} RETENIDO: {why}.** Solo el jefe de taller puede dejarlo seguir: `release {job}` y por qué.',
  'held-named': '**{title} RETENIDO: {why}.** Solo {foreman} puede dejarlo seguir: `release {job}` y por qué.',
  another: 'Otro antes de cerrar lo levanta: `{line}`.',
  noted: 'cartucho anotado: {label}.',
  line: 'Cartucho: {label}.',
  'line-bad': 'Cartucho: {label}. **{why}.**',
  decide: '{title} **{why}**. Tú decides.',
  'may-not-hold': 'Un adhesivo caducado puede no llegar a su resistencia. Otro cartucho antes de cerrar levanta la retención.',
  'may-not-hold-closed': 'Un adhesivo caducado puede no llegar a su resistencia, y la pieza está cerrada.',
};
