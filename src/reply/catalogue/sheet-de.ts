import type { SHEET_EN } from './sheet-en.js';

export const SHEET_DE: Readonly<Record<keyof typeof SHEET_EN, string>> = {
  job: '**Auftrag {job}**',
  more: 'und noch {more}: tippe „when {job}“',
  'in-this-thread': 'Zeiten, Prüfungen und Warnungen zu diesem Auftrag stehen in diesem Thread.',
  watch: 'Brandwache, {who}: {state}',
  'after-hot-work': 'nach der Heißarbeit',
  'open-until': 'offen, Blech schließen bis **{at}**',
  open: 'offen',
  held: '{state}, **GESPERRT**, {reason}',
  'no-time-yet': '{milestone}: noch keine Zeit',
  'check-again': '{milestone} weich, nochmal prüfen **{at}**',
  earliest: '{milestone} frühestens **{at}**, nicht geprüft',
  'by-the-clock': '{milestone} **{at}**, nicht geprüft',
  'no-lamp': 'kein Strahler',
  'heater-off': '{heater} aus',
  'heater-unseen': '{heater} nicht mehr an gesehen',
};
