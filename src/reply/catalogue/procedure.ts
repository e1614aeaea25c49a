import { speaker } from './speaker.js';
import { PROCEDURE_DE } from './procedure-de.js';
import { PROCEDURE_EN } from './procedure-en.js';
import { PROCEDURE_ES } from './procedure-es.js';

/** What was noted about the steps of a job, and what comes next. */
export const sayProcedure = speaker({ en: PROCEDURE_EN, de: PROCEDURE_DE, es: PROCEDURE_ES });
