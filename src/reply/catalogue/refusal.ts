import { REFUSAL_DE } from './refusal-de.js';
import { REFUSAL_EN } from './refusal-en.js';
import { REFUSAL_ES } from './refusal-es.js';
import { speaker } from './speaker.js';

/** Why a command was not carried out, and what to do. */
export const sayRefusal = speaker({ en: REFUSAL_EN, de: REFUSAL_DE, es: REFUSAL_ES });
