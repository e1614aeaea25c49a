import { BUTTONS_DE } from './buttons-de.js';
import { BUTTONS_EN } from './buttons-en.js';
import { BUTTONS_ES } from './buttons-es.js';
import { speaker } from './speaker.js';

/** What stands on the buttons of an answer; what they send is a line of commands and stays one. */
export const sayButtons = speaker({ en: BUTTONS_EN, de: BUTTONS_DE, es: BUTTONS_ES });
