import { speaker } from './speaker.js';
import { STATE_DE } from './state-de.js';
import { STATE_EN } from './state-en.js';
import { STATE_ES } from './state-es.js';

/** The state of a cure and of the heat at it, in a few words. */
export const sayState = speaker({ en: STATE_EN, de: STATE_DE, es: STATE_ES });
