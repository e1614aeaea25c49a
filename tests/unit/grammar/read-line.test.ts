import { describe, expect, test } from 'vitest';
import { LONGEST_LINE } from '../../../src/grammar/reader.js';
import { readLine } from '../../../src/grammar/read-line.js';
import { linesOfFile, SHOP } from './line-file.js';
import { toldCommand, toldMisread, toldProblem } from './told.js';

const valid = ['lines-valid.txt', 'lines-day.txt', 'lines-work.txt', 'lines-languages.txt', 'lines-slips.txt'].flatMap(linesOfFile);
const invalid = ['lines-invalid.txt', 'lines-asked.txt'].flatMap(linesOfFile);

test('the data files hold the lines they should', () => {
  expect(valid.length).toBeGreaterThanOrEqual(700);
  expect(invalid.length).toBeGreaterThanOrEqual(290);
});

describe('lines that are read', () => {
  test.each(valid)('$line ($at)', ({ line, expected, context }) => {
    const read = readLine(line, context);
    expect(read.ok ? toldCommand(read.command, context) : `misread: ${toldMisread(read.misread)}`).toBe(expected);
  });
});

describe('lines that are not read', () => {
  test.each(invalid)('$line ($at)', ({ line, expected, context }) => {
    const read = readLine(line, context);
    expect(read.ok ? `read: ${toldCommand(read.command, context)}` : toldMisread(read.misread)).toBe(expected);
  });

  test.each(invalid)('what is offered instead can be sent: $line ($at)', ({ line, context }) => {
    const read = readLine(line, context);
    const offered = read.ok ? [] : [read.misread.nearest, ...read.misread.choices.map((choice) => choice.line)];
    expect(offered.length).toBeGreaterThan(0);
    expect(offered.filter((one) => !readLine(one, context).ok)).toEqual([]);
  });
});

describe('lines that are hard to write down in a file', () => {
  const problemOf = (line: string) => {
    const read = readLine(line, SHOP);
    return read.ok ? `read as ${read.command.kind}` : toldProblem(read.misread);
  };

  test('nothing at all', () => {
    expect(['', '   ', '\u00a0\u3000', '!!', "'"].map(problemOf)).toEqual(Array.from({ length: 5 }, () => 'a command'));
  });

  test('a text instead of a line', () => {
    expect(problemOf(`release 501 ${'a'.repeat(LONGEST_LINE)}`)).toBe(`a line of at most ${LONGEST_LINE} characters`);
    expect(problemOf(`release 501 ${'a'.repeat(LONGEST_LINE - 12)}`)).toBe('read as release');
  });

  test('spaces of every kind, and marks that cannot be seen', () => {
    const spaced = ['cure\u00a0501\u2009P2\u202flamp\t35', 'cure\u200b501 P2\u3000lamp 35', '\ufeffcure 501 P2 lamp 35\n', '\u200ecure 501 P2 lamp 35\u200f'];
    for (const line of spaced) expect(readLine(line, SHOP)).toEqual(readLine('cure 501 P2 lamp 35', SHOP));
  });

  test('characters that steer a screen are not shown back', () => {
    const read = readLine('closed 501 \u001b[31mred\u0007', SHOP);
    expect(read.ok ? null : read.misread.unclear).toBe('\ufffd[31mred\ufffd');
    expect(readLine('scrap 501 bad\u0000mix', SHOP)).toMatchObject({ ok: true, command: { reason: 'bad\ufffdmix' } });
  });

  test('two lines in one message are two things', () => {
    expect(problemOf('closed 501\noff 502')).toBe('one thing at a time');
  });

  test('a wall of repeated words ends at once', () => {
    for (const word of ['lamp ', '1 ', 'ago ', '- ', 'half ', 'at ', '20-30 ', '!?', '1.', 'j1', 'a']) {
      const read = readLine(word.repeat(Math.floor(LONGEST_LINE / word.length)), SHOP);
      expect(read.ok ? true : readLine(read.misread.nearest, SHOP).ok).toBe(true);
    }
  });
});
