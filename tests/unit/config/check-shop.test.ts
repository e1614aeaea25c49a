import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkShop } from '../../../src/config/check-shop.js';

const SHOP = { path: 'src/shop/example-shop.yaml', example: true };
const CARDS = { path: 'src/cards/', example: true };
const PROCEDURES = { path: 'src/procedures/', example: true };

const folderWith = (yaml: string): { path: string; example: boolean } => {
  const path = mkdtempSync(join(tmpdir(), 'cureclerk-cards-'));
  writeFileSync(join(path, 'card.yaml'), yaml);
  return { path, example: false };
};

it('says what the example shop and its cards say, with the activation energy their figures imply', () => {
  const { ok, lines } = checkShop({ shop: SHOP, cards: CARDS, procedures: PROCEDURES });
  expect(ok).toBe(true);
  expect(lines[0]).toMatch(/^Brackenholt Body & Frame: Europe\/London, 3 people, lamps A, B/);
  expect(lines.join('\n')).toMatch(/Card P1 .*an example: not your data sheet/);
  // Card K carries the usual staged figures (common practice, no source); with 48 h at 20 °C they ask for 69 kJ/mol.
  expect(lines[lines.findIndex((line) => line.startsWith('Card K')) + 1]).toBe('  full: the figures imply an activation energy of 69 kJ/mol.');
});

it('says by how much a card is waited longer than printed', () => {
  const card = 'card: P7\ntitle: careful\nversion: a\nbasis: panel-temperature\nfull: { 20: 300 }\n';
  const linesOf = (text: string): readonly string[] => checkShop({ shop: SHOP, cards: folderWith(text), procedures: PROCEDURES }).lines.filter((line) => !line.startsWith('Procedure '));
  expect(linesOf(`${card}margin-percent: 25\n`).slice(1)).toEqual(['Card P7 (careful, a): full.', '  margin: every wait by rows is taken 25 % longer than printed.']);
  expect(linesOf(card).slice(1)).toEqual(['Card P7 (careful, a): full.']);
});

it.each([
  ['upside down', 'handling: { 20: 100, 30: 300 }', 5, 'handling.30', /hotter is faster/],
  ['of two kinds', 'handling: { 20: 100 }\nrecipe: []', 6, 'recipe', /not known here/],
  ['mistyped', 'handling: { 20: 100 }\nmax-panle: 80', 6, 'max-panle', /did you mean max-panel\?/],
  ['too hot', 'handling: { 20: 100, 260: 3 }', 5, 'handling.260', /from -40 to 250/],
  ['shut before it opens', 'recoat-from: { 20: 100 }\nrecoat-by: 90', 6, 'recoat-by', /later than recoat-from/],
  ['without rows', 'handling: {}', 5, 'handling', /has no rows/],
])('points at file, line and field of a card that is %s, and loads nothing', (_, text, line, field, problem) => {
  const { ok, lines } = checkShop({ shop: SHOP, cards: folderWith(`card: P7\ntitle: wrong\nversion: a\nbasis: panel-temperature\n${text}\n`), procedures: PROCEDURES });
  expect([ok, lines.length, lines.at(-1)]).toEqual([false, 2, '1 to mend. Nothing was loaded.']);
  expect(lines[0]).toContain(`card.yaml line ${line}, ${field}: `);
  expect(lines[0]).toMatch(problem);
});

it('points at rows that imply an activation energy out of the usual', () => {
  const cards = folderWith('card: P7\ntitle: mistyped\nversion: a\nbasis: panel-temperature\nhandling: { 20: 300, 30: 290, 60: 280 }\n');
  expect(checkShop({ shop: SHOP, cards, procedures: PROCEDURES }).lines.filter((line) => !line.startsWith('Procedure ')).at(-1)).toMatch(/activation energy of 1 kJ\/mol, outside the usual 44 to 81 of two-part epoxies: another chemistry, or a mistyped row/);
});

it('names file, line and field of what is wrong, and loads nothing', () => {
  const cards = folderWith('card: P7\ntitle: upside down\nversion: a\nbasis: panel-temperature\nhandling: { 20: 100, 30: 300 }\n');
  const { ok, lines } = checkShop({ shop: SHOP, cards, procedures: PROCEDURES });
  expect(ok).toBe(false);
  expect(lines[0]).toMatch(/card\.yaml.*5.*handling/);
});

describe('the procedures', () => {
  const linesOf = (yaml: string): readonly string[] => checkShop({ shop: SHOP, cards: CARDS, procedures: folderWith(`procedure: patch\ntitle: sill patch\nversion: a\nsteps:\n${yaml}`) }).lines;

  it('are said with their hold points, and examples as examples', () => {
    const { lines } = checkShop({ shop: SHOP, cards: CARDS, procedures: PROCEDURES });
    expect(lines).toContainEqual(expect.stringMatching(/^Procedure windscreen \(windscreen, bonded, example 1, an example: not your repair method\): \d+ steps, hold points plan, dry-fit, handover\.$/));
    expect(linesOf('  - { step: plan, do: Read }\n').at(-1)).toBe('Procedure patch (sill patch, a): 1 step, hold points none.');
  });

  it('are warned of where nobody in the shop may sign', () => {
    const said = linesOf('  - { step: plan, do: Read, sign: [quality] }\n  - { step: end, do: Look, sign: [quality, foreman] }\n');
    expect(said.slice(-2)).toEqual(['Procedure patch (sill patch, a): 2 steps, hold points plan, end.', '  plan: nobody in this shop may sign it (quality): add a role to sign, or a person to shop.yaml.']);
  });

  it('load nothing with a mistake in them', () => {
    expect(linesOf('  - { step: plan, do: Read, after: [bond] }\n')).toEqual(['card.yaml line 5, steps no. 1.after no. 1: bond is no step of this procedure; known are plan', '1 to mend. Nothing was loaded.']);
  });
});
