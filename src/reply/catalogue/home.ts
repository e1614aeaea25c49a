import { HOME_DE } from './home-de.js';
import { HOME_EN } from './home-en.js';
import { HOME_ES } from './home-es.js';
import { speaker } from './speaker.js';

/** What stands around the answers on somebody's home tab. */
export const sayHome = speaker({ en: HOME_EN, de: HOME_DE, es: HOME_ES });
