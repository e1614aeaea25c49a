import { LAMPS_DE } from './lamps-de.js';
import { LAMPS_EN } from './lamps-en.js';
import { LAMPS_ES } from './lamps-es.js';
import { speaker } from './speaker.js';

/** Where every lamp and pad is. */
export const sayLamps = speaker({ en: LAMPS_EN, de: LAMPS_DE, es: LAMPS_ES });
