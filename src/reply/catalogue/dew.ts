import { DEW_DE } from './dew-de.js';
import { DEW_EN } from './dew-en.js';
import { DEW_ES } from './dew-es.js';
import { speaker } from './speaker.js';

/** How near the metal is to the temperature at which moisture settles on it. */
export const sayDew = speaker({ en: DEW_EN, de: DEW_DE, es: DEW_ES });
