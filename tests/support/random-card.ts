import fc from 'fast-check';
import type { MaterialCard, SheetRow } from '../../src/cure/card.js';
import { celsius, minutes } from '../../src/cure/units.js';
import { CARDS } from './card-shelf.js';

/** Rows of which a hotter one is never slower, coldest first. */
export const fallingRows: fc.Arbitrary<SheetRow[]> = fc
  .tuple(fc.uniqueArray(fc.integer({ min: 5, max: 70 }), { minLength: 1, maxLength: 5 }), fc.integer({ min: 5, max: 60 }), fc.array(fc.integer({ min: 0, max: 600 }), { minLength: 5, maxLength: 5 }))
  .map(([temperatures, shortest, longer]) => {
    let length = shortest;
    const hottestFirst = [...temperatures].sort((a, b) => b - a).map((temperature, index): SheetRow => {
      length += index === 0 ? 0 : (longer[index] ?? 0);
      return { temperature: celsius(temperature), minutes: minutes(length) };
    });
    return hottestFirst.reverse();
  });

const hottestOf = (rows: readonly SheetRow[]): number => Math.max(...rows.map((row) => row.temperature));

/** A card with one milestone for each law that counts a temperature; its figures mean no material. */
export const randomCard: fc.Arbitrary<MaterialCard> = fc
  .record({
    handling: fallingRows,
    full: fallingRows,
    open: fallingRows,
    warm: fc.integer({ min: 5, max: 60 }).map(celsius),
    length: fc.integer({ min: 5, max: 900 }).map(minutes),
    after: fc.integer({ min: 0, max: 30 }).map(minutes),
    allowance: fc.option(fc.integer({ min: 0, max: 20 })),
    marginPercent: fc.constantFrom(0, 0, 5, 25, 50),
  })
  .map(({ handling, full, open, warm, length, after, allowance, marginPercent }): MaterialCard => ({
    name: 'X1',
    title: 'made up for a test',
    version: 'test',
    example: true,
    basis: 'panel-temperature',
    milestones: [
      { kind: 'handling', laws: [{ law: 'credit', rows: handling }] },
      { kind: 'full', laws: [{ law: 'credit', rows: full }] },
      { kind: 'dry', laws: [{ law: 'above', temperature: warm, minutes: length }] },
      { kind: 'dwell', laws: [{ law: 'dwell', temperature: warm, minutes: length, after }] },
      { kind: 'recoat-from', laws: [{ law: 'elapsed', minutes: length }] },
    ],
    openTime: { by: 'rows', rows: open },
    maxPanel: allowance === null ? null : celsius(Math.max(warm, hottestOf(handling), hottestOf(full), hottestOf(open)) + allowance),
    maxLamp: null,
    recoatBy: null,
    marginPercent,
    noHeatAfter: false,
    openedDays: null,
  }));

/** The cards that come with the program, and others. */
export const anyCard: fc.Arbitrary<MaterialCard> = fc.oneof(fc.constantFrom(...CARDS), randomCard);
