import { speaker } from './speaker.js';
import { ANSWERED_DE } from './answered-de.js';
import { ANSWERED_EN } from './answered-en.js';
import { ANSWERED_ES } from './answered-es.js';

/** What became of a question that is asked no more. */
export const sayAnswered = speaker({ en: ANSWERED_EN, de: ANSWERED_DE, es: ANSWERED_ES });
