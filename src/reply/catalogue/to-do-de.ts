import type { TO_DO_EN } from './to-do-en.js';

export const TO_DO_DE: Readonly<Record<keyof typeof TO_DO_EN, string>> = {
  'turn-down': '**{heater} auf {setting}, {card} erlaubt {maximum}**: jetzt herunterdrehen, dann die Fuge messen.',
  'open-limit-passed': '**Offene Zeit bis {at} überschritten**: der Meister entscheidet.',
  unchecked: '{milestone} ist **nicht geprüft**: volle Hitze auf weicher Fuge verzieht das Blech.',
  'pad-counts-nothing': 'Eine Heizmatte fährt kein Programm: **nichts davon zählt**.',
  'pad-counts-readings': 'Eine Heizmatte fährt kein Programm: nur was an der Fuge gemessen wird, zählt.',
  'below-stage': 'Das Programm verlangt Strahler {setting}: darunter zählt nichts.',
  'matt-tape': 'Nimm mattes Klebeband oder einen Kontaktfühler.',
  'heat-back': '{heater, select, pad {Heizmatte} other {Strahler}} wieder an? Tippe auf „An“, dann messen.',
  'heat-on-again': '{heater, select, pad {Heizmatte} other {Strahler}} wieder an? Tippe auf „An“, dann nochmal messen.',
  'second-tap': 'Zweite Antwort von Techniker oder Meister: bis dahin wartet es.',
  'foreman-settles': 'Der Meister klärt es.',
  'dry-air': 'Wärme allein bringt hier keine Stunde: sie trocknet die Luft. Feuchte Luft schon; tippe `air 20 rh 50`.',
  'read-again': 'Nochmal messen, wenn es warm ist: bis dahin zählen {value}.',
  'closing-first': '**Vorher ist Feierabend**: Wärme zählt nur bis dahin. Wer bleibt?',
  'read-once': 'Einmal messen: bis dahin zählt nur die Luft.',
  'lock-in': 'Einmal messen, um etwa {at} festzuhalten: bis dahin zählt nur die Luft.',
  'next-stage': 'Als Nächstes: Strahler **{setting}** für {minutes} min, wenn die Reparaturmethode es zulässt.',
  'sheet-decides': 'Datenblatt und Reparaturmethode entscheiden, was als Nächstes kommt.',
  'off-then-sheet-decides': '{heater, select, pad {Heizmatte} other {Strahler}} aus. Datenblatt und Reparaturmethode entscheiden, was als Nächstes kommt.',
  'now-heat': 'Jetzt die Wärme: nur gemessenes Metall zählt.',
};
