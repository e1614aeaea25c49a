import { FORM_DE } from './form-de.js';
import { FORM_EN } from './form-en.js';
import { FORM_ES } from './form-es.js';
import { speaker } from './speaker.js';

/** The form for a new cure, and what is said when nothing came of it. What it sends is a line of commands and stays one. */
export const sayForm = speaker({ en: FORM_EN, de: FORM_DE, es: FORM_ES });
