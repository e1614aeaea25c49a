import { TERMS_DE } from './terms-de.js';
import { TERMS_EN } from './terms-en.js';
import { TERMS_ES } from './terms-es.js';
import { speaker } from './speaker.js';

/** Names of strengths and times, lengths of time, parts of a wait. */
export const sayTerm = speaker({ en: TERMS_EN, de: TERMS_DE, es: TERMS_ES });
