import { speaker } from './speaker.js';
import { WHAT_IF_DE } from './what-if-de.js';
import { WHAT_IF_EN } from './what-if-en.js';
import { WHAT_IF_ES } from './what-if-es.js';

/** What would come of other heat or air, and the names of such heat. */
export const sayWhatIf = speaker({ en: WHAT_IF_EN, de: WHAT_IF_DE, es: WHAT_IF_ES });
