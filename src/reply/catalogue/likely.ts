import { LIKELY_DE } from './likely-de.js';
import { LIKELY_EN } from './likely-en.js';
import { LIKELY_ES } from './likely-es.js';
import { speaker } from './speaker.js';

/** The likely time beside the one that is announced. */
export const sayLikely = speaker({ en: LIKELY_EN, de: LIKELY_DE, es: LIKELY_ES });
