import { onTestFinished, vi } from 'vitest';
import { Phrases } from '../../src/chat/page/client/phrases.js';
import type { Language } from '../../src/repair/shop.js';
import { PAGE_WORDS } from '../../src/reply/catalogue/page.js';
import { LOCALES } from '../../src/reply/catalogue/speaker.js';

/** The words of the page as a browser has them after the first answer, on a page without any places to say them. */
export function phrasesOf(language: Language): Phrases {
  vi.stubGlobal('document', { documentElement: { lang: '' }, querySelectorAll: () => [] });
  onTestFinished(() => { vi.unstubAllGlobals(); });
  const phrases = new Phrases();
  phrases.hear({ language, locale: LOCALES[language], words: PAGE_WORDS[language] });
  return phrases;
}
