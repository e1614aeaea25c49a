import { PAGE_DE } from './page-de.js';
import { PAGE_EN } from './page-en.js';
import { PAGE_ES } from './page-es.js';
import { speaker, type Catalogue } from './speaker.js';

/** What is printed on the local page around the answers. The page itself puts in what stands between braces: plain names only, no plurals. */
export const PAGE_WORDS: Catalogue<keyof typeof PAGE_EN> = { en: PAGE_EN, de: PAGE_DE, es: PAGE_ES };

/** The same where the server says it itself. */
export const sayPage = speaker(PAGE_WORDS);
