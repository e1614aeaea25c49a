import { readFileSync } from 'node:fs';
import { instant } from '../../../src/cure/units.js';
import type { ReadingContext } from '../../../src/grammar/reading.js';

/** One line of a data file, with the shop and the moment it is read in. */
export interface LineCase {
  readonly line: string;
  readonly expected: string;
  readonly context: ReadingContext;
  readonly at: string;
}

/** An invented shop on a Monday afternoon. */
export const SHOP: ReadingContext = {
  now: instant(Date.parse('2026-03-02T14:10:00Z')),
  zone: 'Europe/London',
  cards: ['P1', 'P2', 'K'],
  lamps: ['A', 'B', 'L1'],
  pads: ['1', 'H1'],
  openJobs: ['501', '502'],
  procedures: ['bonded-panel', 'glass'],
};

/**
 * Reads `line => expected`. `@now 2026-03-02T14:10Z` and `@shop zone=… cards=… lamps=… pads=… open=…` change what follows;
 * `@shop` alone goes back to the usual shop. `#` at the start of a line is a comment.
 */
export function linesOfFile(name: string): LineCase[] {
  const cases: LineCase[] = [];
  let context = SHOP;
  const text = readFileSync(new URL(`../../data/${name}`, import.meta.url), 'utf8');
  for (const [index, row] of text.split('\n').entries()) {
    if (row.startsWith('@')) context = changed(context, row);
    const cut = row.indexOf(' => ');
    if (cut < 0 || row.startsWith('#') || row.startsWith('@')) continue;
    cases.push({ line: row.slice(0, cut).trimEnd(), expected: row.slice(cut + 4).trim(), context, at: `${name}:${index + 1}` });
  }
  return cases;
}

function changed(context: ReadingContext, row: string): ReadingContext {
  const [head, ...words] = row.split(' ');
  if (head === '@now') return { ...context, now: instant(Date.parse(words.join(' '))) };
  const given = new Map(words.map((word) => [word.split('=')[0] ?? '', word.split('=')[1] ?? '']));
  const list = (key: string, usual: readonly string[]): readonly string[] => {
    const found = given.get(key);
    return found === undefined ? usual : found.split(',').filter((name) => name !== '');
  };
  return { now: context.now, zone: given.get('zone') ?? SHOP.zone, cards: list('cards', SHOP.cards), lamps: list('lamps', SHOP.lamps), pads: list('pads', SHOP.pads), openJobs: list('open', SHOP.openJobs), procedures: SHOP.procedures };
}
