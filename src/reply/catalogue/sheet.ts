import { SHEET_DE } from './sheet-de.js';
import { SHEET_EN } from './sheet-en.js';
import { SHEET_ES } from './sheet-es.js';
import { speaker } from './speaker.js';

/** The sheet of a job: how each of its cures stands, whatever the time. */
export const saySheet = speaker({ en: SHEET_EN, de: SHEET_DE, es: SHEET_ES });
