import { HAPPENED_DE } from './happened-de.js';
import { HAPPENED_EN } from './happened-en.js';
import { HAPPENED_ES } from './happened-es.js';
import { speaker } from './speaker.js';

/** What was entered, said after the job. */
export const sayHappened = speaker({ en: HAPPENED_EN, de: HAPPENED_DE, es: HAPPENED_ES });
