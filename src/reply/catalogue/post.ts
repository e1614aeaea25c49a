import { POST_DE } from './post-de.js';
import { POST_EN } from './post-en.js';
import { POST_ES } from './post-es.js';
import { speaker } from './speaker.js';

/** What the bot says by itself about a cure: what is due, what has to be read, what somebody has to decide. */
export const sayPost = speaker({ en: POST_EN, de: POST_DE, es: POST_ES });
