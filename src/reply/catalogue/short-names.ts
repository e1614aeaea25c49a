import { speaker } from './speaker.js';
import { SHORT_NAMES_DE } from './short-names-de.js';
import { SHORT_NAMES_EN } from './short-names-en.js';
import { SHORT_NAMES_ES } from './short-names-es.js';

/** Names of strengths and times where several stand in one line. */
export const sayShortName = speaker({ en: SHORT_NAMES_EN, de: SHORT_NAMES_DE, es: SHORT_NAMES_ES });
