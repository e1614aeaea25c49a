import { describe, expect, it } from 'vitest';
import { readConfig } from '../../src/config.js';
import { readCards } from '../../src/config/cards-file.js';
import type { MaterialCard } from '../../src/cure/card.js';

/** The cards that come with the program; their figures are invented. */
function shipped(): readonly MaterialCard[] {
  const read = readConfig({});
  if (!read.ok) throw new Error(read.problems.join('\n'));
  const cards = readCards(read.config.cards.path);
  if (!cards.ok) throw new Error(JSON.stringify(cards.problems));
  return cards.cards;
}

const cards = shipped();

function card(name: string): MaterialCard {
  const found = cards.find((one) => one.name === name);
  if (found === undefined) throw new Error(`no card ${name}`);
  return found;
}

const laws = (name: string) => Object.fromEntries(card(name).milestones.map((rule) => [rule.kind, rule.laws]));
const rows = (figures: readonly (readonly [number, number])[]) => figures.map(([temperature, minutes]) => ({ temperature, minutes }));

describe('the example cards', () => {
  it('are ten, and every one says that it is an example', () => {
    expect(cards.map((one) => one.name)).toEqual(['C1', 'E1', 'F1', 'G1', 'K', 'P1', 'P2', 'S1', 'T1', 'W1']);
    expect(cards.filter((one) => !one.example || one.version !== 'example 1')).toEqual([]);
  });

  it('add no margin to their own figures', () => {
    expect(cards.filter((one) => one.marginPercent !== 0)).toEqual([]);
  });

  it('P1 counts panel temperatures, and states no sanding time', () => {
    expect(laws('P1')).toEqual({
      handling: [{ law: 'credit', rows: rows([[15, 450], [20, 300], [30, 150], [40, 75], [65, 25]]) }],
      full: [{ law: 'credit', rows: rows([[15, 3120], [20, 2160], [30, 1080], [40, 480], [65, 80]]) }],
    });
    expect(card('P1')).toMatchObject({ basis: 'panel-temperature', openTime: { by: 'rows', rows: rows([[20, 60], [30, 30]]) }, maxPanel: 85, maxLamp: null });
  });

  it('P2 is a recipe of two lamp settings without an unheated time', () => {
    const first = { lamp: 35, minutes: 80, reaches: 'handling' };
    expect(laws('P2')).toEqual({
      handling: [{ law: 'recipe', stages: [first] }],
      full: [{ law: 'recipe', stages: [first, { lamp: 55, minutes: 130, reaches: 'full' }] }],
    });
    expect(card('P2')).toMatchObject({ basis: 'lamp-set', openTime: { by: 'rows', rows: rows([[20, 50]]) }, maxPanel: null, maxLamp: 60 });
  });

  it('K states full by recipe or 48 h unheated, handling by recipe alone, and no open time', () => {
    // Common practice, no source: 30 °C 60 min, then 60 °C 90 min; 48 h unheated.
    const first = { lamp: 30, minutes: 60, reaches: 'handling' };
    expect(laws('K')).toEqual({
      handling: [{ law: 'recipe', stages: [first] }],
      full: [{ law: 'recipe', stages: [first, { lamp: 60, minutes: 90, reaches: 'full' }] }, { law: 'credit', rows: rows([[20, 2880]]) }],
    });
    expect(card('K')).toMatchObject({ basis: 'lamp-set', openTime: null });
  });

  it('F1 and T1 state sanding times', () => {
    expect(laws('F1')).toEqual({ sand: [{ law: 'credit', rows: rows([[15, 630], [20, 420], [30, 210], [60, 45]]) }] });
    expect(card('F1').maxPanel).toBe(70);
    expect(laws('T1')).toEqual({ sand: [{ law: 'credit', rows: rows([[20, 30], [50, 12]]) }] });
    expect(card('T1').openTime).toEqual({ by: 'minutes', minutes: 3 });
  });

  it('G1 is a table of temperature and humidity', () => {
    const table = [
      { atLeast: 20, humidity: 45, minutes: 90 },
      { atLeast: 10, humidity: 30, minutes: 240 },
      { atLeast: 5, humidity: 0, minutes: 480 },
    ];
    expect(laws('G1')).toEqual({ 'drive-away': [{ law: 'table', rows: table }] });
    expect(card('G1')).toMatchObject({ basis: 'table', openTime: { by: 'minutes', minutes: 10 } });
  });

  it('S1 hardens in depth with the root of time, and is tooled before it has a skin', () => {
    expect(laws('S1')).toEqual({
      through: [{ law: 'depth-root', depthMillimetres: 3, minutes: 1440, reference: { temperature: 20, humidity: 50 } }],
    });
    expect(card('S1')).toMatchObject({ basis: 'depth', openTime: { by: 'minutes', minutes: 20 } });
  });

  it('E1 is a window, C1 a dwell, W1 time above a temperature', () => {
    expect(laws('E1')).toEqual({ 'recoat-from': [{ law: 'elapsed', minutes: 30 }] });
    expect(card('E1')).toMatchObject({ basis: 'window', recoatBy: 36 * 60 });
    expect(laws('C1')).toEqual({ 'flash-off': [{ law: 'elapsed', minutes: 12 }], dwell: [{ law: 'dwell', temperature: 60, minutes: 35, after: 12 }] });
    expect(card('C1')).toMatchObject({ basis: 'dwell', maxPanel: 70 });
    expect(laws('W1')).toEqual({ 'drip-free': [{ law: 'above', temperature: 15, minutes: 180 }], dry: [{ law: 'above', temperature: 15, minutes: 1200 }] });
    expect(card('W1').basis).toBe('above-temperature');
  });
});
