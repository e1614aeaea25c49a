import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { BEFORE_THE_FIRST_ANSWER } from '../../../src/chat/page/client/phrases.js';
import { pageApp } from '../../../src/chat/page/page-app.js';
import type { Person } from '../../../src/repair/shop.js';
import { PAGE_DE } from '../../../src/reply/catalogue/page-de.js';
import { PAGE_EN } from '../../../src/reply/catalogue/page-en.js';
import { PAGE_ES } from '../../../src/reply/catalogue/page-es.js';
import { pageRoom } from '../../support/page-room.js';
import { sourceFiles } from '../../support/source-files.js';

const english: Readonly<Record<string, string>> = PAGE_EN;
const client = sourceFiles('src/chat/page/client').map(({ text }) => text).join('\n');
const html = readFileSync('src/chat/page/static/index.html', 'utf8');
const found = (text: string, pattern: RegExp): string[] => [...text.matchAll(pattern)].flatMap(([, ...groups]) => groups);

/** Keys that are put together from a part and a word of the server, or said by the server itself. */
const FAMILIES = /^(?:waits|state|tally|field|practice|ask|refused)-/;

describe('the words of the page', () => {
  it('are all asked for, and what is asked for is there', () => {
    const asked = new Set([
      ...found(html, /data-(?:say|aria-label|placeholder)="([^"]+)"/g),
      ...found(client, /(?:phrases\.(?:say|put)|this\.#tab)\((?:[\w#.]+, )?'([^']+)'/g),
      ...found(client, /\? '([a-z-]+)' : '([a-z-]+)'[,)]/g).filter((key) => key in english),
    ]);
    expect([...asked].filter((key) => english[key] === undefined)).toEqual([]);
    expect(Object.keys(english).filter((key) => !asked.has(key) && !FAMILIES.test(key))).toEqual([]);
  });

  it('stand in the page as English until the server has answered', () => {
    const printed = found(html, /data-say="([^"]+)"[^>]*>[^<]*</g).map((key) => [key, new RegExp(`data-say="${key}"[^>]*>([^<]*)<`).exec(html)?.[1]]);
    expect(printed.length).toBeGreaterThan(10);
    expect(printed).toEqual(printed.map(([key = '']) => [key, english[key]]));
    expect(BEFORE_THE_FIRST_ANSWER).toEqual(Object.fromEntries(Object.keys(BEFORE_THE_FIRST_ANSWER).map((key) => [key, english[key]])));
  });

  it('have plain holes only: the page knows no plurals', () => {
    for (const phrase of [PAGE_EN, PAGE_DE, PAGE_ES].flatMap((words) => Object.values(words))) expect(phrase.replaceAll(/\{\w+\}/g, '')).not.toMatch(/[{}']/);
  });
});

const languages = (language: Person['language']): ReturnType<typeof pageRoom> => {
  const { ports } = pageRoom();
  const people = ports.shop.people.map((person) => (person.name === 'Ines' ? { ...person, language: 'de' as const } : { ...person, language }));
  return pageRoom({ shop: { ...ports.shop, people, language } });
};

test.each([
  ['/api/desk?from=Ines', 'de', 'de-DE', PAGE_DE],
  ['/api/desk?from=Tomek', 'es', 'es-ES', PAGE_ES],
  ['/api/desk?from=Nobody%20Known', 'es', 'es-ES', PAGE_ES],
  ['/api/desk', 'es', 'es-ES', PAGE_ES],
])('%s is in the language of whoever writes, else of the shop', async (path, language, locale, words) => {
  const room = languages('es');
  expect(await (await pageApp(room.ports).request(path)).json()).toMatchObject({ language, locale, words });
});

test('the board is asked for in the words of whoever writes', async () => {
  const room = languages('es');
  await pageApp(room.ports).request('/api/desk?from=Ines');
  await pageApp(room.ports).request('/api/desk');
  expect(room.desk.readers).toEqual(['ines', undefined]);
});

test('a name that nobody can have is refused', async () => {
  const response = await pageApp(pageRoom().ports).request('/api/desk?from=%3Cb%3E');
  expect([response.status, await response.json()]).toMatchObject([400, { field: 'from' }]);
});
