import { HOT_WORK_DE } from './hot-work-de.js';
import { HOT_WORK_EN } from './hot-work-en.js';
import { HOT_WORK_ES } from './hot-work-es.js';
import { speaker } from './speaker.js';

/** Hot work and the fire watch after it; nothing of it is leave to weld. */
export const sayHotWork = speaker({ en: HOT_WORK_EN, de: HOT_WORK_DE, es: HOT_WORK_ES });
