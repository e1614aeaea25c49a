import { describe, expect, test } from 'vitest';
import { commandHelp, COMMANDS, COMMAND_TABLE, commandWord, exampleLine } from '../../../src/grammar/command-table.js';
import { readLine } from '../../../src/grammar/read-line.js';
import { wordsOfAll } from '../../../src/grammar/language.js';
import { isArticle, isDepthUnit, isFiller, isHumidityWord, isUnitWord, METHODS, MILESTONES } from '../../../src/grammar/small-words.js';
import { allTimeWords, hourNamed, timeWord } from '../../../src/grammar/time-words.js';
import { LANGUAGES } from '../../../src/repair/shop.js';
import type { CommandKind } from '../../../src/repair/commands.js';
import { saysCommand } from '../../../src/grammar/says-command.js';
import { SHOP } from './line-file.js';
import { toldProblem } from './told.js';

/** What a command cannot do without, by the form it is said in, so that its word makes a valid line; in front where `…` stands. */
const NEEDED: Readonly<Partial<Record<CommandKind, Readonly<Record<string, string>>>>> = {
  read: { read: ' 501 58', probe: ' 501 58', sorry: ' 58' },
  air: { air: ' 19' },
  release: { release: ' 501 warm' },
  check: { check: ' 501 hard' },
  depth: { depth: ' 501 5' },
  'wrong-card': { card: ' 501 P2' },
  'build-up': { metal: ' 501 thin' },
  'what-if': { asked: ' 501', bare: ' what if 501' },
  'latest-start': { asked: ' 501 ready 16:00' },
  lamp: { lamp: ' 501 65', pad: ' 501 65' },
  tap: { tap: ' 501 purge 1' },
  enter: { batch: ' 501 55-B', expiry: ' 501 2027-03', opened: ' 501 today', enter: ' 501 metal 15' },
  hold: { hold: ' 501 cold' },
  override: { override: ' 501 clean late' },
  move: { move: ' 501>502' },
  hand: { hand: ' 501 to Sam' },
  handover: { handover: ' Bo' },
  busy: { busy: ' 30' },
  adopt: { adopt: ' Sam' },
  'turn-away': { refuse: ' Sam' },
};

const kindOf = (line: string): string => {
  const read = readLine(line, SHOP);
  return read.ok ? read.command.kind : toldProblem(read.misread);
};

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
    const lines = Object.entries(declaration.forms).flatMap(([form, words]) => wordsOfAll(words).map((word) => `${word}${NEEDED[declaration.kind]?.[form] ?? ''}`));
    expect(lines.length).toBeGreaterThan(0);
    expect(lines.filter((line) => kindOf(line) !== declaration.kind)).toEqual([]);
  });

  test.each(COMMAND_TABLE)('$kind has words in every language', (declaration) => {
    for (const language of LANGUAGES) expect(Object.values(declaration.forms).flatMap((words) => words[language]).length).toBeGreaterThan(0);
  });

  test('no word says two commands, in whatever language', () => {
    const words = commandHelp().flatMap((one) => [...new Set(one.words)]);
    expect(words.filter((word, index) => words.indexOf(word) !== index)).toEqual([]);
  });

  test('a word that also means something else is one that was thought about', () => {
    const said = COMMAND_TABLE.flatMap(({ kind, forms }) => Object.values(forms).flatMap(wordsOfAll).map((word) => ({ kind, word })));
    const times = said.filter(({ word }) => timeWord(word) !== null || hourNamed(word) !== null).map(({ kind, word }) => `${word}: ${kind} or ${timeWord(word) ?? 'an hour'}`);
    const named = said.filter(({ word }) => [...METHODS, ...MILESTONES].some(([, words]) => wordsOfAll(words).includes(word))).map(({ kind, word }) => `${word}: ${kind}`);
    const small = said.filter(({ word }) => isFiller(word) || isArticle(word) || isUnitWord(word) || isHumidityWord(word) || isDepthUnit(word)).map(({ kind, word }) => `${word}: ${kind}`);
    // `an` switches a lamp on in German, and stands before an hour in English; `lista` lists, and is ready by Friday.
    expect(times).toEqual(['an: on or an', 'lista: who-waits or by']);
    expect(named).toEqual([]);
    expect(small).toEqual([]);
  });

  test('each word of time means one thing', () => {
    const words = allTimeWords();
    // `una` is an article and one o'clock; which of them, its neighbours say.
    expect(words.filter((word, index) => words.indexOf(word) !== index)).toEqual(['una']);
  });

  test('help has one line for each command, with its own word', () => {
    expect(commandHelp()).toHaveLength(COMMAND_TABLE.length);
    for (const [index, declaration] of COMMAND_TABLE.entries()) expect(commandHelp()[index]?.usage).toContain(commandWord(declaration));
  });
});

describe('a command word in a line', () => {
  test('found wherever it stands', () => {
    expect(['closed 501', '501 closed', 'lamp30', 'the lamp was off', 'who waits', '?', 'card 501 P1', 'when start 501', 'what if 501', 'bo takes all except 501', 'can 501 be moved', 'lmp 501 35'].filter((line) => !saysCommand(line, SHOP))).toEqual([]);
  });

  test('not found where there is none', () => {
    expect(['501 P2', '501', '', 'banana 501', '20 min ago', '501 card P1', '501 5 mm'].filter((line) => saysCommand(line, SHOP))).toEqual([]);
  });
});
