import { COMMON_DE } from './common-de.js';
import { COMMON_EN } from './common-en.js';
import { COMMON_ES } from './common-es.js';
import { speaker } from './speaker.js';

/** Names of strengths and times, lengths of time, parts of a wait. */
export const sayCommon = speaker({ en: COMMON_EN, de: COMMON_DE, es: COMMON_ES });
