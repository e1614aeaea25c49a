import type { SHOP_EN } from './shop-en.js';

export const SHOP_DE: Readonly<Record<keyof typeof SHOP_EN, string>> = {
  'air-noted': 'Luft **{value}** notiert {at}.',
  'air-noted-humidity': 'Luft **{value}**, {humidity, number} % Feuchte notiert {at}.',
  'typed-is': '{typed, number} °{unit} = {value}',
  'nothing-moves': 'Keine laufende Wartezeit ändert sich.',
  'card-needs': '{card} braucht {needs}',
  'nothing-would-count': '{cards}: bei {value} würde nichts zählen.',
  more: 'und noch {count}: tippe „who waits“.',
  'forecast-was': '{title} {forecast} (vorher {was}).',
  'damp-held': '{title} **GESPERRT**: {why}. Der Meister entscheidet.',
  'open-was': '{title} {open} Vorher war es {at}.',
  'taken-back': '**zurückgenommen:** {what}. Beides bleibt im Protokoll.',
  'taken-back-from': '**{job} zurückgenommen:** {what}. Beides bleibt im Protokoll.',
  entry: 'Eintrag',
  'fact-of': '{fact} von {at}',
  'fact-to-card': '{fact} auf {card}',
  'moves-count-nothing': 'Die Bewegung von {times} **zählt** jetzt **nicht**: das Blech steht als offen da. Doch vorher geschlossen? Gib ein, wann, dann zählt sie wieder.',
};
