import type { QUESTIONS_EN } from './questions-en.js';

export const QUESTIONS_DE: Readonly<Record<keyof typeof QUESTIONS_EN, string>> = {
  'limit-undecided': 'Offene Zeit bis {at} war überschritten: der Meister entscheidet.',
  'limit-decided': 'Offene Zeit bis {at} war überschritten, vom Meister entschieden.',
  'recoat-by': 'Überlackieren bis **{at}**, danach neu vorbereiten.',
  'law-first': 'Datenblatt, Methode des Fahrzeugherstellers, örtliche Vorschriften und deine Berechtigung gehen vor. Das ist eine Erinnerung, keine Freigabe.',
};
