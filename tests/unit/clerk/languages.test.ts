import { describe, expect, it } from 'vitest';
import type { Language } from '../../../src/repair/shop.js';
import { settingFor } from '../../../src/reply/compose/setting-for.js';
import { personId } from '../../../src/repair/ids.js';
import { toText } from '../../../src/reply/to-text.js';
import { DeskDay } from '../../support/desk-day.js';
import { exampleShop } from '../../support/example-shop.js';
import { on } from '../../support/joint.js';

const OWN: Readonly<Record<string, Language>> = { ines: 'de', tomek: 'es', wren: 'en' };
const people = exampleShop().people.map((person) => ({ ...person, language: OWN[person.id] ?? person.language }));
/** Said with everything that rests on an example card, so it shows whose words an answer has. */
const NOTE: Readonly<Record<Language, string>> = { en: 'P1 is an example card', de: 'P1 ist eine Beispielkarte', es: 'P1 es una ficha de ejemplo' };
const desk = (language: Language): DeskDay => new DeskDay({ people, language });

const languageIn = (text: string): string => (['en', 'de', 'es'] as const).filter((language) => text.includes(NOTE[language])).join(' and ');

/** `handover ines de`: to whom each message went, and in whose words. */
const sent = (day: DeskDay): string[] => [...new Set(day.posts().map(({ about, to, answer }) => `${about.kind} ${to} ${languageIn(toText(answer))}`))];

describe('the words of an answer', () => {
  it('are those of whoever typed the line', () => {
    const day = desk('en');
    expect(['ines', 'tomek', 'wren'].map((who, index) => languageIn(day.told(who, '08:00', `cure ${501 + index} P1`)))).toEqual(['de', 'es', 'en']);
    expect(['ines', 'tomek', 'wren', 'sam'].map((who) => languageIn(day.told(who, '08:01', 'when 501')))).toEqual(['de', 'es', 'en', 'en']);
  });

  it('are those of the shop for strangers, also when they are taken on', () => {
    const day = desk('de');
    expect(languageIn(day.told('sam', '07:59', 'who waits'))).toBe('');
    day.says('ines', '08:00', 'cure 501 P1');
    expect(languageIn(day.told('sam', '08:01', 'when 501'))).toBe('de');
    day.says('sam', '08:02', 'cure 502 P1');
    day.says('ines', '08:03', 'adopt sam technician');
    expect(languageIn(day.told('sam', '08:04', 'cure 502 P1'))).toBe('de');
  });
});

describe('the words of a message', () => {
  it('are those of the person it goes to', () => {
    const day = desk('en');
    day.says('wren', '08:00', 'cure 501 P1');
    day.says('tomek', '08:01', 'cure 502 P1');
    day.says('wren', '08:02', 'hand 502 to ines');
    day.at('13:10');
    expect(sent(day)).toEqual(['handover ines de', 'handover tomek es', 'handling wren en', 'handling ines de']);
  });

  it('are those of the shop for the channel', () => {
    const day = desk('es');
    day.says('ines', '16:00', 'cure 501 P1');
    day.at('17:01');
    expect(sent(day)).toEqual(['bundle channel es']);
  });

  it('are the reader\'s where many matters come as one', () => {
    const day = desk('en');
    for (let job = 501; job <= 508; job += 1) day.says('tomek', '08:00', `cure ${job} P1`);
    day.at('14:00');
    const together = day.posts('bundle').find(({ to }) => to === 'tomek');
    expect(languageIn(toText(together?.answer ?? day.says('tomek', '14:00', 'help')))).toBe('es');
  });
});

it('a setting holds the language of the one who reads, and the shop\'s for everybody else', () => {
  const shop = exampleShop({ people, language: 'es' });
  const languages = [personId('ines'), personId('wren'), personId('nobody'), 'channel' as const].map((who) => settingFor(who, { shop, now: on('08:00') }).language);
  expect(languages).toEqual(['de', 'en', 'es', 'es']);
});
