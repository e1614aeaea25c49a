import { speaker } from './speaker.js';
import { WHY_DE } from './why-de.js';
import { WHY_EN } from './why-en.js';
import { WHY_ES } from './why-es.js';

/** The sum behind a time, to be redone with a pocket calculator. */
export const sayWhy = speaker({ en: WHY_EN, de: WHY_DE, es: WHY_ES });
