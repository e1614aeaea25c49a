import { speaker } from './speaker.js';
import { PROCEDURE_REFUSAL_DE } from './procedure-refusal-de.js';
import { PROCEDURE_REFUSAL_EN } from './procedure-refusal-en.js';
import { PROCEDURE_REFUSAL_ES } from './procedure-refusal-es.js';

/** Why nothing was stored about the steps of a job, and what to do. */
export const sayProcedureRefusal = speaker({ en: PROCEDURE_REFUSAL_EN, de: PROCEDURE_REFUSAL_DE, es: PROCEDURE_REFUSAL_ES });
