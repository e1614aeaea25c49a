import { describe, expect, test } from 'vitest';
import { commandHelp, COMMANDS, COMMAND_TABLE, commandWord, exampleLine } from '../../../src/grammar/command-table.js';
import { readLine } from '../../../src/grammar/read-line.js';
import type { CommandKind } from '../../../src/repair/commands.js';
import { saysCommand } from '../../../src/grammar/says-command.js';
import { SHOP } from './line-file.js';

/** What a command cannot do without, so that a word alone makes a valid line. */
function needed(kind: CommandKind, words: string): string {
  if (kind === 'read') return ' 501 58';
  if (kind === 'air') return ' 19';
  if (kind === 'release') return ' 501 warm';
  if (kind === 'check') return words.startsWith('check') ? ' 501 hard' : '';
  if (kind === 'depth') return ' 501 5';
  if (kind === 'wrong-card') return ' 501 P2';
  if (kind === 'build-up') return words === 'metal' || words.startsWith('build') ? ' 501 thin' : '';
  if (kind === 'what-if') return words.startsWith('what') ? ' 501' : ' what if 501';
  if (kind === 'latest-start') return ' 501 ready 16:00';
  return kind === 'lamp' && !words.includes('up') ? ' 501 65' : '';
}

describe('the command table', () => {
  test('a declaration stands under its own kind', () => {
    expect(Object.entries(COMMANDS).filter(([kind, declaration]) => declaration.kind !== kind)).toEqual([]);
  });

  test.each(commandHelp())('the example of $kind is that command, in any shop', ({ kind, example }) => {
    const read = readLine(example, SHOP);
    expect(read.ok ? read.command.kind : read.misread).toBe(kind);
    for (const jobs of [[], ['7'], ['58', '65']]) {
      // Where no card is known nobody can have taken the wrong one.
      const cards = kind === 'wrong-card' ? ['K'] : [];
      const line = exampleLine(COMMANDS[kind], jobs, cards);
      expect(readLine(line, { ...SHOP, cards, lamps: [], pads: [], openJobs: jobs })).toMatchObject({ ok: true, command: { kind } });
    }
  });

  test.each(COMMAND_TABLE)('every word of $kind says that command', (declaration) => {
    const wholeLines = commandHelp().find(({ kind }) => kind === declaration.kind)?.words ?? [];
    expect(wholeLines.length).toBeGreaterThan(0);
    for (const words of wholeLines) {
      expect(readLine(`${words}${needed(declaration.kind, words)}`, SHOP)).toMatchObject({ ok: true, command: { kind: declaration.kind } });
    }
  });

  test('no word says two commands', () => {
    const words = commandHelp().flatMap((one) => one.words);
    expect(words.filter((word, index) => words.indexOf(word) !== index)).toEqual([]);
  });

  test('help has one line for each command, with its own word', () => {
    expect(commandHelp()).toHaveLength(COMMAND_TABLE.length);
    for (const [index, declaration] of COMMAND_TABLE.entries()) expect(commandHelp()[index]?.usage).toContain(commandWord(declaration));
  });
});

describe('a command word in a line', () => {
  test('found wherever it stands', () => {
    expect(['closed 501', '501 closed', 'lamp30', 'the lamp was off', 'who waits', '?', 'card 501 P1', 'when start 501', 'what if 501'].filter((line) => !saysCommand(line, SHOP))).toEqual([]);
  });

  test('not found where there is none', () => {
    expect(['501 P2', '501', '', 'closet 501', '20 min ago', '501 card P1', '501 5 mm'].filter((line) => saysCommand(line, SHOP))).toEqual([]);
  });
});
