import { speaker } from './speaker.js';
import { TO_DO_DE } from './to-do-de.js';
import { TO_DO_EN } from './to-do-en.js';
import { TO_DO_ES } from './to-do-es.js';

/** The one thing to do after an entry. */
export const sayToDo = speaker({ en: TO_DO_EN, de: TO_DO_DE, es: TO_DO_ES });
