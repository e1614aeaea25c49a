import type { STANDING_EN } from './standing-en.js';

export const STANDING_DE: Readonly<Record<keyof typeof STANDING_EN, string>> = {
  overridden: '**Ausnahme**: {list}.',
  'overridden-more': '**Ausnahme**: {list}; und noch {more}.',
  'overridden-one': '{step}, {who} {at}: „{reason}“',
  decided: '**Entschieden**: {list}.',
  'decided-more': '**Entschieden**: {list}; und {more} weitere.',
  'decided-one': '{what} geht weiter, {who} {at}: „{reason}“',
  'decided-short': 'entschieden: {who} {at}: „{reason}“',
  held: '{job} **GESPERRT** seit {at} von {who}: „{reason}“. Nichts geht weiter, bis der Meister freigibt: `release {job} Grund`.',
  'held-short': '**GESPERRT** seit {at} von {who}: „{reason}“, der Meister entscheidet',
  'overridden-short': 'Ausnahme: {list}',
  'overridden-short-one': '{step} ({who} {at}: „{reason}“)',
  'overridden-short-more': 'Ausnahme: {list} und noch {more}',
  'example-procedure': '{name} ist ein Beispielablauf, nicht die Reparaturmethode des Fahrzeugherstellers.',
};
