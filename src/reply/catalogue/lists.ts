import { LISTS_DE } from './lists-de.js';
import { LISTS_EN } from './lists-en.js';
import { LISTS_ES } from './lists-es.js';
import { speaker } from './speaker.js';

/** Cars that wait, in one line each, and the bundles of a day. */
export const sayLists = speaker({ en: LISTS_EN, de: LISTS_DE, es: LISTS_ES });
