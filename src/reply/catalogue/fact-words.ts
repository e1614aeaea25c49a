import { FACT_WORDS_DE } from './fact-words-de.js';
import { FACT_WORDS_EN } from './fact-words-en.js';
import { FACT_WORDS_ES } from './fact-words-es.js';
import { speaker } from './speaker.js';

/** What an entry was, by its kind, where it is taken back. */
export const sayFactWords = speaker({ en: FACT_WORDS_EN, de: FACT_WORDS_DE, es: FACT_WORDS_ES });
