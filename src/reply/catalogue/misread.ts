import { MISREAD_DE } from './misread-de.js';
import { MISREAD_EN } from './misread-en.js';
import { MISREAD_ES } from './misread-es.js';
import { speaker } from './speaker.js';

/** What was understood of a line, and what it needs instead. */
export const sayMisread = speaker({ en: MISREAD_EN, de: MISREAD_DE, es: MISREAD_ES });
