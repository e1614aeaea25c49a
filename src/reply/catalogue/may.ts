import { speaker } from './speaker.js';
import { MAY_DE } from './may-de.js';
import { MAY_EN } from './may-en.js';
import { MAY_ES } from './may-es.js';

/** What stands against a deed; never leave to do it. */
export const sayMay = speaker({ en: MAY_EN, de: MAY_DE, es: MAY_ES });
