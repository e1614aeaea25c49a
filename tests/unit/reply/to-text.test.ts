import { expect, test } from 'vitest';
import type { Answer } from '../../../src/reply/answer.js';
import { toText } from '../../../src/reply/to-text.js';

const answer = (lines: Answer['lines']): Answer => ({ tone: 'plain', lines, buttons: [{ label: 'Hard', line: 'check 501 hard' }] });

test('lines stand under each other, spans follow each other, strong words are plain', () => {
  const lines: Answer['lines'] = [
    [{ kind: 'text', text: '501 P1 handling ' }, { kind: 'strong', text: '12:03' }, { kind: 'text', text: '.' }],
    [{ kind: 'strong', text: 'Take one reading.' }],
  ];
  expect(toText(answer(lines))).toBe('501 P1 handling 12:03.\nTake one reading.');
});

test('an empty line stays an empty line, and nothing at all is nothing', () => {
  expect(toText(answer([[{ kind: 'text', text: 'one' }], [], [{ kind: 'text', text: 'two' }]]))).toBe('one\n\ntwo');
  expect(toText(answer([]))).toBe('');
});
