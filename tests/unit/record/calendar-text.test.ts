import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { calendarLine, calendarText } from '../../../src/record/calendar-text.js';

const octets = (text: string): number => new TextEncoder().encode(text).length;
const words = fc.string({ unit: 'grapheme', maxLength: 200 });

function readBack(text: string): unknown {
  return ICAL.Component.fromString(`BEGIN:VEVENT\r\n${calendarLine(`SUMMARY:${calendarText(text)}`)}END:VEVENT\r\n`).getFirstPropertyValue('summary');
}

describe('text in a calendar', () => {
  it.each([
    ['plain: nothing to do', 'plain: nothing to do'],
    ['a\\b', 'a\\\\b'],
    ['one\r\ntwo\rthree\nfour', 'one\\ntwo\\nthree\\nfour'],
    ['', ''],
  ])('%j becomes %j', (text, expected) => {
    expect(calendarText(text)).toBe(expected);
  });

  it('folds at 75 octets and not at 74', () => {
    expect(calendarLine('x'.repeat(75))).toBe(`${'x'.repeat(75)}\r\n`);
    expect(calendarLine('x'.repeat(76))).toBe(`${'x'.repeat(75)}\r\n x\r\n`);
    expect(calendarLine('x'.repeat(150))).toBe(`${'x'.repeat(75)}\r\n ${'x'.repeat(74)}\r\n x\r\n`);
    expect(calendarLine(`${'x'.repeat(74)}é`)).toBe(`${'x'.repeat(74)}\r\n é\r\n`);
  });

  it('comes back out of any folded line, none of which is too long', () => {
    fc.assert(
      fc.property(words, (text) => {
        const line = calendarLine(`SUMMARY:${calendarText(text)}`);
        expect(line.split('\r\n').every((one) => octets(one) <= 75)).toBe(true);
        expect(line.replaceAll('\r\n ', '')).toBe(`SUMMARY:${calendarText(text)}\r\n`);
      }),
      { seed: 1, numRuns: 500 },
    );
  });

  it.each(['60 °C; bay 3, left\nsecond line \\ end', 'äöü漢字'.repeat(30), '👩🏽‍🔧 '.repeat(12)])('is read back by a stranger as it was: %j', (text) => {
    expect(readBack(text)).toBe(text);
  });
});
