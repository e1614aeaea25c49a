import { expect, test } from 'vitest';
import { pieces, stateWord, subjectOf, waitsFor } from '../../../../src/chat/page/client/words.js';
import { MILESTONE_KINDS } from '../../../../src/cure/card.js';
import { LANGUAGES } from '../../../../src/repair/shop.js';
import { phrasesOf } from '../../../support/page-phrases.js';

const strong = (text: string): string[] => pieces(text).filter((piece) => piece.strong).map((piece) => piece.text);

test.each([
  ['501 P2 lamp 35 since 09:42. Handling 11:02.', ['501', '09:42', '11:02']],
  ['Handling 13:20 if the lamp stays on', ['13:20']],
  ['7203', []],
  ['ratio 10:1, code 1:23:45', []],
  ['', []],
])('in %j one sees %j first', (text, seen) => {
  expect(strong(text)).toEqual(seen);
});

test('nothing of an answer is lost or moved', () => {
  const text = '501 handling 12:03, full 14:19 at 20 °C (10:1).';
  expect(pieces(text).map((piece) => piece.text).join('')).toBe(text);
});

test('every milestone has words of the trade, and a kind unknown here is shown as it is', () => {
  for (const language of LANGUAGES) for (const kind of [...MILESTONE_KINDS, 'open-limit', 'decision']) expect(waitsFor(kind, phrasesOf(language))).not.toMatch(/-(?!away|free)/);
  expect(waitsFor('handling', phrasesOf('de'))).toBe('Handfestigkeit');
  expect(waitsFor('something-newer', phrasesOf('en'))).toBe('something-newer');
});

test('a state unknown here is shown as held', () => {
  expect(['running', 'due', 'held', 'asleep', 'confirmed', 'newer'].map(stateWord)).toEqual(['running', 'due', 'held', 'asleep', 'confirmed', 'held']);
});

test('the first joint needs no name', () => {
  expect([subjectOf('501', 'j1'), subjectOf('501', 'j2')]).toEqual(['501', '501 j2']);
});
