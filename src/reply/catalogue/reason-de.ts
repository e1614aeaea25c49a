import type { REASON_EN } from './reason-en.js';

export const REASON_DE: Readonly<Record<keyof typeof REASON_EN, string>> = {
  title: 'Weitergehen',
  why: 'Warum?',
  stands: '{line} und was du schreibst; es steht in jeder späteren Antwort.',
  send: 'Senden',
  cancel: 'Abbrechen',
  'not-opened': 'Das Formular ging nicht auf. Tippe: `{line}` und warum.',
  'not-written': 'Nichts notiert: hier ging etwas schief. Bitte nochmal senden.',
};
