import { ENTRY_DE } from './entry-de.js';
import { ENTRY_EN } from './entry-en.js';
import { ENTRY_ES } from './entry-es.js';
import { speaker } from './speaker.js';

/** What an entry did to the cure: the next wait, metal and dew point, too hot. */
export const sayEntry = speaker({ en: ENTRY_EN, de: ENTRY_DE, es: ENTRY_ES });
