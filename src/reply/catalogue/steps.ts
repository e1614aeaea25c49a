import { speaker } from './speaker.js';
import { STEPS_DE } from './steps-de.js';
import { STEPS_EN } from './steps-en.js';
import { STEPS_ES } from './steps-es.js';

/** One step of a procedure: what to do, what is left of it, why it waits. */
export const saySteps = speaker({ en: STEPS_EN, de: STEPS_DE, es: STEPS_ES });
