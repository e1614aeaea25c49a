import { speaker } from './speaker.js';
import { LATEST_START_DE } from './latest-start-de.js';
import { LATEST_START_EN } from './latest-start-en.js';
import { LATEST_START_ES } from './latest-start-es.js';

/** Until when a joint can be closed. */
export const sayLatestStart = speaker({ en: LATEST_START_EN, de: LATEST_START_DE, es: LATEST_START_ES });
