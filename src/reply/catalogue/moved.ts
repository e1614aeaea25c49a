import { MOVED_DE } from './moved-de.js';
import { MOVED_EN } from './moved-en.js';
import { MOVED_ES } from './moved-es.js';
import { speaker } from './speaker.js';

/** What went from one job to another. */
export const sayMoved = speaker({ en: MOVED_EN, de: MOVED_DE, es: MOVED_ES });
