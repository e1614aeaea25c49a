import { QUESTIONS_DE } from './questions-de.js';
import { QUESTIONS_EN } from './questions-en.js';
import { QUESTIONS_ES } from './questions-es.js';
import { speaker } from './speaker.js';

/** What the answer about one job says besides its waits. */
export const sayQuestions = speaker({ en: QUESTIONS_EN, de: QUESTIONS_DE, es: QUESTIONS_ES });
