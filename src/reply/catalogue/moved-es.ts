import type { MOVED_EN } from './moved-en.js';

export const MOVED_ES: Readonly<Record<keyof typeof MOVED_EN, string>> = {
  more: 'y {count} más: escribe «when {job}».',
  'keeps-only-move': '{job} solo conserva el traslado en su registro.',
  'moved-here': '**{title}** {card} trasladado aquí desde {from}, inicio {start}.',
  'nothing-waits': 'Allí no espera nada.',
};
