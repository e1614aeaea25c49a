import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readCards } from '../../../src/config/cards-file.js';
import { describeProblem } from '../../../src/config/file-problem.js';
import type { MaterialCard } from '../../../src/cure/card.js';
import { writtenFiles } from '../../support/written-files.js';

const PANEL = 'card: Q\ntitle: paste\nversion: "3"\nbasis: panel-temperature\n';
const DEPTH = 'card: S\ntitle: bead\nversion: a\nbasis: depth\n';
const THROUGH = 'through: { depth-mm: 3, within: 24 h, temperature: 20, humidity: 50 }\n';
const LAMP = 'card: Q\ntitle: paste\nversion: "3"\nbasis: lamp-set\n';
const GOOD = `${PANEL}full: { 20: 48 h, 60: 90 }\n`;

function problems(files: Readonly<Record<string, string>>): string[] {
  const read = readCards(writtenFiles(files));
  return read.ok ? [] : read.problems.map(describeProblem);
}

describe('a folder of cards', () => {
  it('is read whole, sorted by name, with hours as minutes and rows from cold to hot', () => {
    const read = readCards(writtenFiles({ 'b.yaml': GOOD, 'a.yml': GOOD.replace('card: Q', 'card: R').replace('20: 48 h, 60: 90', '60: 90, -5: 7 h, 20: 100 min'), 'note.txt': 'x' }));
    expect(read).toMatchObject({ ok: true, cards: [{ name: 'Q', example: false, openTime: null, maxPanel: null, recoatBy: null }, { name: 'R' }] });
    expect(read.ok && read.cards.map((card) => card.milestones[0]?.laws[0])).toEqual([
      { law: 'credit', rows: [{ temperature: 20, minutes: 2880 }, { temperature: 60, minutes: 90 }] },
      { law: 'credit', rows: [{ temperature: -5, minutes: 420 }, { temperature: 20, minutes: 100 }, { temperature: 60, minutes: 90 }] },
    ]);
  });

  it('is refused whole when one card is wrong, with all that is wrong in every file', () => {
    const read = readCards(writtenFiles({ 'a.yaml': GOOD, 'b.yaml': GOOD.replace('card: Q', 'card: j1'), 'c.yaml': GOOD.replace('Q', 'S').replace('90', '-1') }));
    expect(read).toMatchObject({ ok: false, problems: [{ file: 'b.yaml', line: 1, field: 'card' }, { file: 'c.yaml', line: 5, field: 'full.60' }] });
  });

  it('refuses one name on two cards, also in other capitals', () => {
    expect(problems({ 'a.yaml': GOOD, 'b.yaml': `# second\n${GOOD.replace('card: Q', 'card: q')}` })).toEqual(['b.yaml line 2, card: q is the name of the card in a.yaml already']);
  });

  it('is refused when a file in it cannot be read', () => {
    const folder = writtenFiles({ 'b.yaml': GOOD });
    mkdirSync(join(folder, 'a.yaml'));
    const read = readCards(folder);
    expect(read.ok ? [] : read.problems.map(describeProblem).join('\n')).toMatch(/^a\.yaml: cannot be read .*$/);
  });

  it('says so when there is no folder or no card in it', () => {
    expect(readCards('/nowhere/cards')).toMatchObject({ ok: false, problems: [{ file: '/nowhere/cards', line: null }] });
    expect(problems({ 'note.txt': 'x' })).toEqual([expect.stringContaining('holds no material card')]);
  });
});

describe('a card states', () => {
  const cardOf = (text: string): MaterialCard => {
    const read = readCards(writtenFiles({ 'a.yaml': text }));
    if (!read.ok) throw new Error(read.problems.map(describeProblem).join('\n'));
    const [card] = read.cards;
    if (card === undefined) throw new Error('no card');
    return card;
  };

  it('a margin, none unless it says so', () => {
    expect([GOOD, `${GOOD}margin-percent: 25\n`, `${GOOD}margin-percent: 0\n`].map((text) => cardOf(text).marginPercent)).toEqual([0, 25, 0]);
  });

  it('a window for the next coat beside its rows', () => {
    const card = cardOf(`${PANEL}recoat-from: { 20: 60, 40: 20 }\nrecoat-by: 24 h\n`);
    expect([card.recoatBy, card.milestones.map((rule) => rule.kind)]).toEqual([1440, ['recoat-from']]);
  });

  it.each([
    ['a panel card', `${GOOD}flash-off: 12\n`, ['flash-off', 'full'], 'credit'],
    ['a window', 'card: E\ntitle: primer\nversion: a\nbasis: window\nrecoat-from: 12\nflash-off: 12\n', ['flash-off', 'recoat-from'], 'elapsed'],
    ['a dwell', 'card: C\ntitle: coat\nversion: a\nbasis: dwell\ndwell: { at-least: 60, minutes: 35 }\nflash-off: 12\n', ['flash-off', 'dwell'], 'dwell'],
  ])('a flash-off on %s, as the first of its waits', (_, text, kinds, next) => {
    const { milestones } = cardOf(text);
    expect(milestones.map((rule) => rule.kind)).toEqual(kinds);
    expect(milestones[0]?.laws).toEqual([{ law: 'elapsed', minutes: 12 }]);
    expect(milestones[1]?.laws[0]?.law).toBe(next);
  });

  it.each([
    ['the skin where it says nothing else', 'skin: 25\n', { by: 'minutes', minutes: 25 }],
    ['the earlier of the two', 'skin: 25\nopen: 20\n', { by: 'minutes', minutes: 20 }],
    ['the skin where it is earlier', 'skin: 15\nopen: 20\n', { by: 'minutes', minutes: 15 }],
    ['no row later than the skin', 'skin: 15\nopen: { 20: 20, 30: 10 }\n', { by: 'rows', rows: [{ temperature: 20, minutes: 15 }, { temperature: 30, minutes: 10 }] }],
    ['nothing without either', '', null],
  ])('as the last moment to tool a bead %s', (_, text, openTime) => {
    const card = cardOf(`${DEPTH}${THROUGH}${text}`);
    expect(card.openTime).toEqual(openTime);
    expect(card.milestones.map((rule) => rule.kind)).toEqual(['through']);
  });
});

describe('a card is refused', () => {
  it.each([
    ['a hotter row that takes longer', `${PANEL}full:\n  20: 300\n  30: 310\n`, 'a.yaml line 7, full.30: must be shorter than the 300 minutes at 20 °C'],
    ['a hotter row that takes as long', `${PANEL}full: { 20: 300, 30: 300 }\n`, 'line 5, full.30: must be shorter'],
    ['an open time that grows with heat', `${GOOD}open: { 20: 10, 30: 20 }\n`, 'line 6, open.30: must be shorter'],
    ['a milestone without rows', `${PANEL}full: {}\n`, 'line 5, full: has no rows'],
    ['a card without a milestone', PANEL, 'line 1: has no milestone'],
    ['a flash-off and nothing after it', `${PANEL}flash-off: 12\n`, 'line 1: has no milestone'],
    ['a row hotter than anything', `${PANEL}full: { 300: 5 }\n`, 'line 5, full.300: stands where a row has a temperature in °C from -40 to 250'],
    ['a row of no temperature', `${PANEL}full: { warm: 5 }\n`, 'line 5, full.warm: stands where'],
    ['a maximum out of range', `${GOOD}max-panel: 300\n`, 'line 6, max-panel: must be a temperature in °C from -40 to 250'],
    ['one temperature in two ways', `${PANEL}full:\n  20: 300\n  "20.0": 200\n`, 'a.yaml line 7, full.20.0: is a second row for 20 °C'],
    ['a row colder than anything', `${PANEL}full: { -41: 5 }\n`, 'line 5, full.-41: stands where a row has a temperature'],
    ['a stage hotter than anything', `${LAMP}recipe:\n  - { lamp: 251, minutes: 60, reaches: full }\n`, 'line 6, recipe no. 1.lamp: must be a temperature in °C from -40 to 250'],
    ['an open row above the panel maximum', `${PANEL}full: { 20: 300 }\nopen: { 20: 60, 40: 30 }\nmax-panel: 35\n`, 'line 7, max-panel: is 35 °C, below 40 °C that this card counts with'],
    ['rows without figures', `${PANEL}full:\n`, 'line 5, full: must be rows, each a temperature'],
    ['a margin below nothing', `${GOOD}margin-percent: -1\n`, 'line 6, margin-percent: must be percent that the waits by rows grow by, 0 to 100'],
    ['a margin above 100', `${GOOD}margin-percent: 101\n`, 'line 6, margin-percent: must be percent'],
    ['a margin in words', `${GOOD}margin-percent: 25 %\n`, 'line 6, margin-percent: must be percent'],
    ['an opened cartridge that may be used for no day', `${GOOD}opened-days: 0\n`, 'line 6, opened-days: must be whole days from 1 to 730'],
    ['an opened cartridge in words', `${GOOD}opened-days: a month\n`, 'line 6, opened-days: must be whole days from 1 to 730'],
    ['a margin on a recipe', `${LAMP}recipe:\n  - { lamp: 30, minutes: 60, reaches: full }\nmargin-percent: 25\n`, 'line 7, margin-percent: is not known here'],
    ['a margin on a bead', `${DEPTH}${THROUGH}margin-percent: 25\n`, 'line 6, margin-percent: is not known here'],
    ['a margin on a dwell', 'card: C\ntitle: coat\nversion: a\nbasis: dwell\ndwell: { at-least: 60, minutes: 35 }\nmargin-percent: 25\n', 'line 6, margin-percent: is not known here'],
    ['a flash-off on a bead', `${DEPTH}${THROUGH}flash-off: 12\n`, 'line 6, flash-off: is not known here'],
    ['a flash-off of no time', `${GOOD}flash-off: 0\n`, 'line 6, flash-off: must be longer than 0 minutes'],
    ['a flash-off after the next coat', 'card: E\ntitle: primer\nversion: a\nbasis: window\nflash-off: 31\nrecoat-from: 30\n', 'line 5, flash-off: must not be longer than recoat-from (30 minutes'],
    ['a flash-off after the soonest next coat by rows', `${PANEL}recoat-from: { 20: 60, 60: 10 }\nflash-off: 12\n`, 'line 6, flash-off: must not be longer than recoat-from (10 minutes'],
    ['an end without a beginning of the window', `${GOOD}recoat-by: 24 h\n`, 'line 6, recoat-by: needs recoat-from'],
    ['a window by rows that closes before it opens', `${PANEL}recoat-from: { 20: 90, 40: 60 }\nrecoat-by: 60\n`, 'line 6, recoat-by: must be later than recoat-from (60 minutes'],
    ['a window that the margin shuts', `${PANEL}recoat-from: { 20: 60 }\nrecoat-by: 70\nmargin-percent: 20\n`, 'line 6, recoat-by: must be later than recoat-from (72 minutes'],
    ['a skin without the depth', `${DEPTH}skin: 25\n`, 'line 1: has no milestone'],
    ['a bead in dry air', `${DEPTH}through: { depth-mm: 3, within: 24 h, temperature: 20, humidity: 0 }\n`, 'line 5, through.humidity: must be more than 0 percent'],
    ['a bead of no depth', `${DEPTH}through: { depth-mm: 0, within: 24 h, temperature: 20, humidity: 50 }\n`, 'line 5, through.depth-mm: must be more than 0 mm'],
    ['a bead without the air it was measured in', `${DEPTH}through: { depth-mm: 3, within: 24 h }\n`, 'line 5, through.temperature: is missing'],
    ['rows on a bead', `${DEPTH}${THROUGH}full: { 20: 300 }\n`, 'line 6, full: is not known here'],
    ['a dwell on a panel card', `${GOOD}dwell: { at-least: 60, minutes: 35 }\n`, 'line 6, dwell: is not known here'],
    ['a table on a window', 'card: E\ntitle: primer\nversion: a\nbasis: window\nrecoat-from: 30\ndrive-away:\n  - { at-least: 20, humidity: 40, minutes: 90 }\n', 'line 6, drive-away: is not known here'],
    ['no time', `${PANEL}full: { 20: 0 }\n`, 'line 5, full.20: must be longer than 0 minutes'],
    ['a time in other words', `${PANEL}full: { 20: 2 days }\n`, 'line 5, full.20: must be minutes, or a time such as 36 h'],
    ['a time of months', `${PANEL}full: { 20: 5000 h }\n`, 'line 5, full.20: is longer than 60 days'],
    ['an unknown key, naming the nearest', `${GOOD}handlign: { 20: 30 }\n`, 'line 6, handlign: is not known here; did you mean handling?'],
    ['an unknown key far from all', `${GOOD}colour: grey\n`, 'line 6, colour: is not known here; known are basis, card,'],
    ['an unknown key inside', `${LAMP}recipe:\n  - { lamp: 30, minutes: 60, reaches: full, hold: 3 }\n`, 'line 6, recipe no. 1.hold: is not known here'],
    ['panel rows on a lamp card', `${LAMP}recipe:\n  - { lamp: 30, minutes: 60, reaches: full }\nhandling: { 20: 300 }\n`, 'line 7, handling: is not known here'],
    ['a recipe on a panel card', `${GOOD}recipe:\n  - { lamp: 30, minutes: 60, reaches: full }\n`, 'line 6, recipe: is not known here'],
    ['unheated rows as hot as the lamp', `${LAMP}recipe:\n  - { lamp: 30, minutes: 60, reaches: full }\nunheated: { full: { 20: 900, 30: 60 } }\n`, 'line 7, unheated.full.30: is as hot as the lamp (30)'],
    ['a recipe that reaches nothing', `${LAMP}recipe:\n  - { lamp: 30, minutes: 60, reaches: full }\n  - { lamp: 60, minutes: 60 }\n`, 'line 7, recipe no. 2: is the last stage'],
    ['a milestone reached twice', `${LAMP}recipe:\n  - { lamp: 30, minutes: 60, reaches: full }\n  - { lamp: 60, minutes: 60, reaches: full }\n`, 'line 7, recipe no. 2.reaches: full is reached by an earlier stage'],
    ['a recipe without stages', `${LAMP}recipe: []\n`, 'line 5, recipe: has no stages'],
    ['a panel maximum below a row', `${GOOD}max-panel: 55\n`, 'line 6, max-panel: is 55 °C, below 60 °C'],
    ['a lamp maximum below a stage', `${LAMP}recipe:\n  - { lamp: 60, minutes: 60, reaches: full }\nmax-lamp: 50\n`, 'line 7, max-lamp: is 50 °C, below 60 °C'],
    ['an unknown basis', GOOD.replace('panel-temperature', 'panel'), 'line 4, basis: must be one of panel-temperature, lamp-set, table'],
    ['a missing title', GOOD.replace('title: paste\n', ''), 'line 1, title: is missing'],
    ['a version that YAML reads as a number', GOOD.replace('"3"', '2.10'), 'line 3, version: must be words; put a number into quotes'],
    ['a name that reads like a joint', GOOD.replace('card: Q', 'card: J2'), 'line 1, card: reads like the number of a joint'],
    ['a name that begins with a digit', GOOD.replace('card: Q', 'card: "31"'), 'line 1, card: must begin with a letter'],
    ['a table row without humidity', 'card: G\ntitle: glass\nversion: a\nbasis: table\ndrive-away:\n  - { at-least: 20, minutes: 90 }\n', 'line 6, drive-away no. 1.humidity: is missing'],
    ['a worse table row that is as short', 'card: G\ntitle: glass\nversion: a\nbasis: table\ndrive-away:\n  - { at-least: 20, humidity: 40, minutes: 90 }\n  - { at-least: 10, humidity: any, minutes: 90 }\n', 'line 7, drive-away no. 2.minutes: must be longer than the 90 minutes'],
    ['a window that closes before it opens', 'card: E\ntitle: primer\nversion: a\nbasis: window\nrecoat-from: 60\nrecoat-by: 1 h\n', 'line 6, recoat-by: must be later than recoat-from'],
    ['a dwell above the maximum', 'card: C\ntitle: coat\nversion: a\nbasis: dwell\ndwell: { at-least: 60, minutes: 35 }\nmax-panel: 50\n', 'line 6, max-panel: is 50 °C, below 60 °C'],
    ['an empty file', '', 'line 1: must be keys with values'],
    ['a list', '- 1\n', 'line 1: must be keys with values'],
    ['a doubled key', `${GOOD}title: other\n`, 'line 6: has a key that stands here already'],
    ['one row twice, once in quotes', `${PANEL}full: { 20: 300, "20": 100 }\n`, 'line 5: has a key that stands here already'],
    ['a second document', `${GOOD}---\n${GOOD}`, 'line 6: begins a second document'],
    ['broken writing', `${PANEL}full: [1\nopen: }\n`, 'line 6: '],
    ['an unknown tag', `${GOOD}open: !secret 3\n`, 'line 6: Unresolved tag'],
  ])('for %s', (_, text, expected) => {
    expect(problems({ 'a.yaml': text }).join('\n')).toContain(expected);
  });
});
