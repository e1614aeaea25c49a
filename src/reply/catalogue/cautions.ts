import { CAUTIONS_DE } from './cautions-de.js';
import { CAUTIONS_EN } from './cautions-en.js';
import { CAUTIONS_ES } from './cautions-es.js';
import { speaker } from './speaker.js';

/** One caution, in the words of the trade; a reminder, never permission. */
export const sayCautions = speaker({ en: CAUTIONS_EN, de: CAUTIONS_DE, es: CAUTIONS_ES });
