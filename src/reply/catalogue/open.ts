import { OPEN_DE } from './open-de.js';
import { OPEN_EN } from './open-en.js';
import { OPEN_ES } from './open-es.js';
import { speaker } from './speaker.js';

/** The open time: by when to close, what has passed, what is damp, how deep the bead is. */
export const sayOpen = speaker({ en: OPEN_EN, de: OPEN_DE, es: OPEN_ES });
