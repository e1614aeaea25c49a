import { REASON_DE } from './reason-de.js';
import { REASON_EN } from './reason-en.js';
import { REASON_ES } from './reason-es.js';
import { speaker } from './speaker.js';

/** The form that asks for a reason. */
export const sayReason = speaker({ en: REASON_EN, de: REASON_DE, es: REASON_ES });
