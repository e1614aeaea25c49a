import type { MOVED_EN } from './moved-en.js';

export const MOVED_DE: Readonly<Record<keyof typeof MOVED_EN, string>> = {
  more: 'und noch {count}: tippe „when {job}“.',
  'keeps-only-move': 'In {job} bleibt nur der Umzug im Protokoll.',
  'moved-here': '**{title}** {card} von {from} hierher verschoben, Beginn {start}.',
  'nothing-waits': 'Dort wartet nichts.',
};
