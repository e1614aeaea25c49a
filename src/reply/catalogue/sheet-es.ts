import type { SHEET_EN } from './sheet-en.js';

export const SHEET_ES: Readonly<Record<keyof typeof SHEET_EN, string>> = {
  job: '**Trabajo {job}**',
  more: 'y {more} más: escribe «when {job}»',
  'in-this-thread': 'Las horas, pruebas y avisos de este trabajo están en este hilo.',
  watch: 'Vigilancia de incendio, {who}: {state}',
  'after-hot-work': 'después del trabajo en caliente',
  'open-until': 'abierto, cierra el panel antes de **{at}**',
  open: 'abierto',
  held: '{state}, **RETENIDO**, {reason}',
  'no-time-yet': '{milestone}: aún sin hora',
  'check-again': '{milestone}: blando, comprobar otra vez **{at}**',
  earliest: '{milestone}: como pronto **{at}**, sin comprobar',
  'by-the-clock': '{milestone}: **{at}**, sin comprobar',
  'no-lamp': 'sin lámpara',
  'heater-off': '{heater} apagada',
  'heater-unseen': '{heater} ya no vista encendida',
};
