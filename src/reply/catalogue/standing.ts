import { speaker } from './speaker.js';
import { STANDING_DE } from './standing-de.js';
import { STANDING_EN } from './standing-en.js';
import { STANDING_ES } from './standing-es.js';

/** That a whole job is held, and what the foreman let go on. */
export const sayStanding = speaker({ en: STANDING_EN, de: STANDING_DE, es: STANDING_ES });
