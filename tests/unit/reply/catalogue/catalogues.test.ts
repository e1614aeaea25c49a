import { IntlMessageFormat } from 'intl-messageformat';
import { describe, expect, it } from 'vitest';
import { LANGUAGES, type Language } from '../../../../src/repair/shop.js';
import { speaker } from '../../../../src/reply/catalogue/speaker.js';
import { catalogueFiles } from '../../../support/catalogues.js';

const { areas, phrasesOf } = await catalogueFiles();
const OTHERS = LANGUAGES.filter((language) => language !== 'en');

/** The kind of plain text in the parser's tree. */
const LITERAL = '0';

type Elements = ReturnType<IntlMessageFormat['getAst']>;

/** Every placeholder of a phrase as `name:kind`, those inside plurals and choices too. */
function placeholders(phrase: string): string[] {
  const seen = new Set<string>();
  const walk = (elements: Elements): void => {
    for (const element of elements) {
      if ('value' in element && String(element.type) !== LITERAL) seen.add(`${element.value}:${element.type}`);
      if ('options' in element) for (const option of Object.values(element.options)) walk(option.value);
    }
  };
  walk(new IntlMessageFormat(phrase, 'en-GB', undefined, { ignoreTag: true }).getAst());
  return [...seen].sort();
}

const marks = (phrase: string, mark: string): number => phrase.split(mark).length - 1;

describe.each(areas)('the phrases of %s', (area) => {
  const phrases = (language: Language): Readonly<Record<string, string>> => phrasesOf(area, language);

  it.each(OTHERS)('stand in %s under the same keys, with the same placeholders and marks', (language) => {
    const [english, other] = [phrases('en'), phrases(language)];
    expect(Object.keys(other).sort()).toEqual(Object.keys(english).sort());
    for (const [key, phrase] of Object.entries(english)) {
      expect([key, placeholders(other[key] ?? '')]).toEqual([key, placeholders(phrase)]);
      expect([key, marks(other[key] ?? '', '**') % 2, marks(other[key] ?? '', '`')]).toEqual([key, 0, marks(phrase, '`')]);
    }
  });

  it('promise nothing', () => {
    for (const language of LANGUAGES) {
      for (const phrase of Object.values(phrases(language))) expect(phrase).not.toMatch(/\b(safe|safely|guaranteed|cured|sicher|garantiert|ausgehärtet|seguro|segura|garantizad[oa])\b/i);
    }
  });
});

it('every language has every area', () => {
  expect(areas.length).toBeGreaterThan(0);
  expect(areas.filter((area) => LANGUAGES.some((language) => Object.keys(phrasesOf(area, language)).length === 0))).toEqual([]);
});

describe('a speaker', () => {
  const say = speaker({ en: { waits: "{cars, plural, one {# car waits} other {# cars wait}} at {who}'s" }, de: { waits: '{cars, plural, one {# Auto wartet} other {# Autos warten}} bei {who}' }, es: { waits: '{cars, plural, one {# coche espera} other {# coches esperan}} con {who}' } });

  it('says it in the reader\'s language, in English to whoever said nothing', () => {
    expect(say({}, 'waits', { cars: 1, who: 'Ines' })).toBe("1 car waits at Ines's");
    expect(say({ language: 'de' }, 'waits', { cars: 2, who: 'Ines' })).toBe('2 Autos warten bei Ines');
    expect(say({ language: 'es' }, 'waits', { cars: 1, who: '<b>{x}' })).toBe('1 coche espera con <b>{x}');
  });

  it('says nothing with a hole in it', () => {
    expect(() => say({ language: 'de' }, 'waits', { cars: 2 })).toThrow('who');
  });
});
