import { TAKEOVER_DE } from './takeover-de.js';
import { TAKEOVER_EN } from './takeover-en.js';
import { TAKEOVER_ES } from './takeover-es.js';
import { speaker } from './speaker.js';

/** The question at the end of a shift: who goes on. */
export const sayTakeover = speaker({ en: TAKEOVER_EN, de: TAKEOVER_DE, es: TAKEOVER_ES });
