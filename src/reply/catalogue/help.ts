import { HELP_DE } from './help-de.js';
import { HELP_EN } from './help-en.js';
import { HELP_ES } from './help-es.js';
import { speaker } from './speaker.js';

/** What each command is for, in a few words. */
export const sayHelp = speaker({ en: HELP_EN, de: HELP_DE, es: HELP_ES });
