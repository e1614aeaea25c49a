import type { SHOP_EN } from './shop-en.js';

export const SHOP_ES: Readonly<Record<keyof typeof SHOP_EN, string>> = {
  'air-noted': 'Aire **{value}** anotado {at}.',
  'air-noted-humidity': 'Aire **{value}**, {humidity, number} % de humedad, anotado {at}.',
  'typed-is': '{typed, number} °{unit} = {value}',
  'nothing-moves': 'No cambia ninguna espera en curso.',
  'card-needs': '{card} necesita {needs}',
  'nothing-would-count': '{cards}: a {value} no contaría nada.',
  more: 'y {count} más: escribe «who waits».',
  'forecast-was': '{title} {forecast} (antes {was}).',
  'damp-held': '{title} **RETENIDO**: {why}. Decide el jefe de taller.',
  'open-was': '{title} {open} Antes era {at}.',
  'taken-back': '**anulado:** {what}. Ambas cosas quedan en el registro.',
  'taken-back-from': '**{job}, anulado:** {what}. Ambas cosas quedan en el registro.',
  entry: 'entrada',
  'fact-of': '{fact} ({at})',
  'fact-to-card': '{fact} a {card}',
  'moves-count-nothing': 'El movimiento de {times} ya **no cuenta**: el panel consta como abierto. ¿Se cerró antes después de todo? Anota cuándo y volverá a contar.',
};
