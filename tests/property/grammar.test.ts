import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { instant, minutes } from '../../src/cure/units.js';
import { MILESTONE_KINDS } from '../../src/cure/card.js';
import { BUILD_UPS } from '../../src/cure/warm-up.js';
import { commandHelp } from '../../src/grammar/command-table.js';
import { DEEDS } from '../../src/grammar/commands/may.js';
import { readLine } from '../../src/grammar/read-line.js';
import type { ReadingContext } from '../../src/grammar/reading.js';
import type { EntryCommand, TypedTemperature, When } from '../../src/repair/commands.js';
import { entryNo, jobNo, jointNo, lampName } from '../../src/repair/ids.js';
import { lineOf, type LineCommand } from '../../src/repair/line-of.js';
import { ENTERINGS } from '../../src/repair/procedure.js';
import { ROLES } from '../../src/repair/shop.js';
import { linesOfFile, SHOP } from '../unit/grammar/line-file.js';
import { toldLabel, toldProblem } from '../unit/grammar/told.js';

const WORDS = commandHelp().flatMap(({ words }) => words);
const SMALL = ['20', '58', '501', '502', '65', '1,30', '30.5', '86F', '30c', '°', 'C', 'F', 'P1', 'k', 'P9', 'A', 'l1', 'D', 'j2', 'j0', '20-30', '-', 'to', 'min', 'h', 'ago', 'at', 'since', 'ca', '~9:20', '13:40', '25:70', 'half', 'past', 'an', 'hour', 'yesterday', 'fri', 'pm', 'now', 'yes', 'not', 'rh', '55%', '%', 'tape', 'bare', 'full', 'card', 'please', 'the', '#12', '?', '!', '2026-03-02T11:40', '2026-03-29T01:30:00Z', 'lmp', 'hrd', 'xcept', 'clamps', '50l', '03', '>', 'sam', 'bo', 'takes', 'all', 'except', 'says', 'do', 'can', 'vor', 'hace', 'halb', 'acht', 'y', 'media', 'a', 'las', 'uhr', 'nicht', 'weld', '5 mm', '2,5mm', 'mm', 'from', 'by', 'ready', 'tomorrow', 'H1', '1', 'not P1', 'lamp', 'pad', 'air', 'start', '🙂', '<@U1>'];

/** Names as the shop's files allow them, the awkward ones often. */
const name = fc.oneof(fc.constantFrom('A', 'B', 'C', 'F', 'H', 'M', 'K', 'P1', 'L1', 'ON', 'OFF', 'CAR', 'NOW', 'READ', 'AT', 'RH', 'X9'), fc.stringMatching(/^[A-Za-z][A-Za-z0-9]{0,5}$/));
const context: fc.Arbitrary<ReadingContext> = fc.record({
  now: fc.integer({ min: Date.parse('2026-01-01T00:00Z'), max: Date.parse('2027-01-01T00:00Z') }).map(instant),
  zone: fc.constantFrom('Europe/London', 'Europe/Madrid', 'America/St_Johns', 'Pacific/Auckland'),
  cards: fc.array(name, { maxLength: 6 }),
  lamps: fc.array(name, { maxLength: 4 }),
  pads: fc.array(fc.oneof(fc.constantFrom('1', '2', '5', '9'), name), { maxLength: 3 }),
  openJobs: fc.array(fc.oneof(fc.constantFrom('20', '58', '65', '501', '502', '7220', '7258'), fc.stringMatching(/^\d{1,7}$/)), { maxLength: 5 }),
  procedures: fc.array(fc.constantFrom('bonded-panel', 'glass', 'Sill 2'), { maxLength: 3 }),
});
const soup = fc.array(fc.oneof(fc.constantFrom(...WORDS), fc.constantFrom(...SMALL)), { minLength: 1, maxLength: 9 }).map((words) => words.join(' '));
const anything = fc.oneof(fc.string({ unit: 'binary', maxLength: 320 }), fc.string({ unit: 'grapheme', maxLength: 80 }), fc.string({ unit: fc.constantFrom(...'0123456789.,:-~@#%°?! ajlmpc'.split('')), maxLength: 60 }));

/** Everything a misread offers must be a line that is read. */
function offersOnlyValid(line: string, shop: ReadingContext): void {
  const read = readLine(line, shop);
  if (read.ok) return;
  const offered = [read.misread.nearest, ...read.misread.choices.map((choice) => choice.line)];
  expect(offered.filter((one) => !readLine(one, shop).ok)).toEqual([]);
  expect(toldProblem(read.misread)).not.toBe('');
  expect(read.misread.choices.map((choice) => toldLabel(choice).trim())).not.toContain('');
}

describe('whatever is typed', () => {
  test('is read or answered with lines that would be read', () => {
    fc.assert(fc.property(anything, context, offersOnlyValid), { numRuns: 1500 });
  });

  test('the same for heaps of words the reader knows', () => {
    fc.assert(fc.property(soup, context, offersOnlyValid), { numRuns: 1500 });
  });

  test('the same for good lines with one letter changed', () => {
    const lines = ['lines-valid.txt', 'lines-day.txt', 'lines-work.txt', 'lines-languages.txt'].flatMap(linesOfFile).map(({ line }) => line);
    const slip = fc.tuple(fc.constantFrom(...lines), fc.nat(), fc.constantFrom('', 'x', '5', ' ', '?', '.')).map(([line, at, put]) => `${line.slice(0, at % line.length)}${put}${line.slice((at % line.length) + 1)}`);
    fc.assert(fc.property(slip, context, offersOnlyValid), { numRuns: 800 });
  });
});

describe('what makes no difference', () => {
  const cases = linesOfFile('lines-valid.txt').filter(({ expected }) => !expected.includes('reason='));

  test('capitals and spaces', () => {
    const spaces = fc.array(fc.constantFrom(' ', '  ', '\t', '\u00a0', '\u2009 '), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(fc.constantFrom(...cases), fc.array(fc.boolean(), { minLength: 1, maxLength: 20 }), spaces, (one, upper, gaps) => {
        const capitals = Array.from(one.line, (letter, index) => (upper[index % upper.length] === true ? letter.toUpperCase() : letter.toLowerCase())).join('');
        const spaced = capitals.split(' ').reduce((line, word, index) => `${line}${gaps[index % gaps.length] ?? ' '}${word}`);
        expect(readLine(` ${spaced} `, one.context)).toEqual(readLine(one.line, one.context));
      }),
    );
  });

  test('the order of the parts', () => {
    const parts = fc.record({
      parts: fc.constantFrom(['cure', 'P2', 'lamp 35', 'A', '20 min ago'], ['paste', 'P1', 'j2', 'at 13:40'], ['closed', 'K', '20-30 ago'], ['read', '30,5', 'tape', 'since 9:20'], ['lamp', '65C', 'A', 'half an hour ago'], ['check', 'hard', 'full', '13:40'], ['off', "don't know when", 'A'], ['on', 'lamp A', '1 h 20 ago'], ['paste', 'P1', '5 mm', '20 min ago'], ['pad', '60C', 'H1', '13:40'], ['depth', 'j2', '2,5 mm'], ['what if', 'lamp 65', 'air 25', 'from 15:00'], ['when start', 'P1', 'full', '5 mm', 'ready fri 16:00']),
      order: fc.array(fc.nat(), { minLength: 4, maxLength: 4 }),
      jobFirst: fc.boolean(),
    });
    fc.assert(
      fc.property(parts, ({ parts: [word = '', ...others], order, jobFirst }) => {
        const shuffled = others.map((part, index) => ({ part, key: order[index] ?? 0 })).sort((one, other) => one.key - other.key);
        const line = [...(jobFirst ? ['501', word] : [word, '501']), ...shuffled.map(({ part }) => part)].join(' ');
        expect(readLine(line, SHOP)).toEqual(readLine([word, '501', ...others].join(' '), SHOP));
      }),
    );
  });

  test('comma or point in a temperature', () => {
    fc.assert(
      fc.property(fc.integer({ min: -400, max: 2500 }), fc.constantFrom('', 'C', '°C', ' C'), (tenths, unit) => {
        const value = tenths / 10;
        const typed = `${value.toFixed(1)}${unit}`;
        const read = readLine(`read 501 ${typed.replace('.', ',')}`, SHOP);
        expect(read).toEqual(readLine(`read 501 ${typed}`, SHOP));
        expect(read).toMatchObject({ ok: true, command: { job: '501', value: { value } } });
      }),
    );
  });
});

describe('the line that a button sends', () => {
  const temperature: fc.Arbitrary<TypedTemperature> = fc.record({ value: fc.integer({ min: -39, max: 249 }), unit: fc.constantFrom('C' as const, 'F' as const, null) });
  const tenths = fc.record({ value: fc.integer({ min: -390, max: 2490 }).map((value) => value / 10), unit: fc.constantFrom('C' as const, 'F' as const, null) });
  const moment = fc.integer({ min: SHOP.now - 5 * 24 * 3_600_000, max: SHOP.now + 24 * 3_600_000 }).map(instant);
  const when: fc.Arbitrary<When> = fc.oneof(
    fc.constant({ earliest: SHOP.now, latest: SHOP.now, stated: false, confirmed: false }),
    fc.tuple(moment, fc.boolean()).map(([at, confirmed]) => ({ earliest: at, latest: at, stated: true, confirmed })),
  );
  const subject = { job: fc.constantFrom('501', '502').map(jobNo), joint: fc.option(fc.constantFrom('j1', 'j2', 'j12').map(jointNo)) };
  const depth = fc.option(fc.integer({ min: 5, max: 500 }).map((tenths) => tenths / 10));
  const cardName = fc.constantFrom(...SHOP.cards);
  const card = fc.option(cardName);
  const named = (names: readonly string[]) => fc.option(fc.constantFrom(...names).map(lampName));
  const lamp = named([...SHOP.lamps, ...SHOP.pads]);
  // Behind the word pad a figure from 1 to 9 may be the number of a pad.
  const padTemperature = temperature.filter(({ value, unit }) => unit !== null || value > 9);
  const lampSet = fc.record({ heater: fc.constant('lamp' as const), setting: fc.option(temperature), lamp: named(SHOP.lamps) });
  const padSet = fc.record({ heater: fc.constant('pad' as const), setting: padTemperature, lamp: named(SHOP.pads) });
  const padAlone = fc.record({ heater: fc.constant('pad' as const), setting: fc.constant(null), lamp: fc.constantFrom(...SHOP.pads).map(lampName) });
  const supposed = fc.oneof(
    fc.record({ heater: fc.constant('lamp' as const), unheated: fc.constant(false), setting: fc.option(temperature), air: fc.option(temperature) }),
    fc.record({ heater: fc.constant('lamp' as const), unheated: fc.constant(true), setting: fc.constant(null), air: fc.option(temperature) }),
    fc.record({ heater: fc.constant('pad' as const), unheated: fc.constant(false), setting: padTemperature, air: fc.option(padTemperature) }),
  );
  const label = fc.record({ batch: fc.constantFrom('55-B', '7', 'L/9+3'), expiry: fc.option(fc.constantFrom('03/27', '31 Mar 2027', 'soon')), opened: fc.option(fc.constantFrom('20.10.26', '2026-02')) });
  const reason = fc.constantFrom('metal was warm', 'Bead at the top (coldest) is hard, 3 checks', 'lamp was off, not hard yet?');
  const step = fc.constantFrom('weld', 'dry-fit', 'Purge the nozzle', 'clamps off', 'weld 2', 'both flow');
  const person = fc.constantFrom('sam', 'Bo', 'Sam Miller', '<@U123>', 'Mo');
  const is = <K extends LineCommand['kind']>(kind: K): fc.Arbitrary<K> => fc.constant(kind);
  const command: fc.Arbitrary<LineCommand> = fc.oneof(
    fc.record({ kind: is('paste'), ...subject, card, depth, when }),
    fc.record({ kind: is('paste'), ...subject, card, depth, label, when }),
    fc.record({ kind: is('closed'), ...subject, card, depth, when }),
    fc.record({ kind: is('moved'), ...subject, when }),
    fc.tuple(fc.record({ kind: is('cure'), ...subject, card, depth, label, when }), fc.oneof(lampSet, padSet, padAlone)).map(([one, heat]) => ({ ...one, ...heat })),
    fc.tuple(fc.record({ kind: is('cure'), ...subject, card, depth, when }), fc.oneof(lampSet, padSet, padAlone)).map(([one, heat]) => ({ ...one, ...heat })),
    fc.tuple(fc.record({ kind: is('lamp'), ...subject, when }), fc.oneof(lampSet, padSet)).map(([one, heat]) => ({ ...one, ...heat })),
    fc.record({ kind: is('off'), ...subject, lamp, since: fc.constant('stated' as const), when }),
    fc.record({ kind: is('on'), ...subject, lamp, when }),
    fc.record({ kind: is('read'), ...subject, value: tenths, method: fc.constantFrom('unstated' as const, 'contact' as const, 'tape' as const, 'bare' as const), when }),
    fc.record({ kind: is('air'), value: tenths, humidity: fc.option(fc.integer({ min: 0, max: 100 })), when }),
    fc.record({ kind: is('check'), ...subject, milestone: fc.option(fc.constantFrom(...MILESTONE_KINDS)), result: fc.constantFrom('hard' as const, 'soft' as const), when }),
    fc.record({ kind: is('later'), ...subject }),
    fc.record({ kind: is('stay'), ...subject }),
    fc.record({ kind: is('release'), ...subject, reason }),
    fc.record({ kind: is('scrap'), ...subject, reason: fc.oneof(fc.constant(''), reason) }),
    fc.record({ kind: is('depth'), ...subject, millimetres: fc.integer({ min: 5, max: 500 }).map((tenths) => tenths / 10) }),
    fc.record({ kind: is('build-up'), ...subject, buildUp: fc.constantFrom(...BUILD_UPS) }),
    fc.record({ kind: is('wrong-card'), ...subject, card: cardName }),
    fc.record({ kind: is('when'), ...subject }),
    fc.record({ kind: is('why'), ...subject }),
    fc.tuple(fc.record({ kind: is('what-if'), ...subject, from: fc.option(moment) }), supposed).map(([one, heat]) => ({ ...one, ...heat })),
    fc.record({ kind: is('latest-start'), ...subject, card, milestone: fc.option(fc.constantFrom(...MILESTONE_KINDS)), depth, readyBy: moment }),
    fc.record({ kind: is('begin'), ...subject, procedure: fc.option(fc.constantFrom(...SHOP.procedures, 'sill')) }),
    fc.record({ kind: is('done'), ...subject, step: fc.option(step), when }),
    fc.record({ kind: is('sign'), ...subject, step: fc.option(step) }),
    fc.record({ kind: is('tap'), ...subject, step, tap: fc.integer({ min: 0, max: 98 }) }),
    fc.record({ kind: is('enter'), ...subject, what: fc.constantFrom(...ENTERINGS), text: fc.constantFrom('55-B', '55', '2027-03', 'O0 I1 l', 'j', 'at 13:40', 'Lot 7 (left)') }),
    fc.record({ kind: is('enter'), ...subject, what: fc.constant('batch' as const), text: fc.constantFrom('55-B', '7 left'), more: fc.constantFrom([{ what: 'expiry' as const, text: '03/27' }], [{ what: 'opened' as const, text: '1.2.26' }, { what: 'expiry' as const, text: 'soon' }]) }),
    fc.record({ kind: is('enter'), ...subject, what: fc.constant('photo' as const), text: fc.constant('') }),
    fc.record({ kind: is('hold'), ...subject, reason }),
    fc.record({ kind: is('override'), ...subject, step: fc.option(fc.constantFrom('clean', 'dry-fit', 'Weld')), reason }),
    fc.record({ kind: is('weld'), ...subject, when }),
    fc.record({ kind: is('hand'), ...subject, to: person }),
    fc.record({ kind: is('handover'), to: person, except: fc.uniqueArray(fc.constantFrom('501', '502', '7', '7203').map(jobNo)) }),
    fc.record({ kind: is('accept') }),
    fc.record({ kind: is('busy'), minutes: fc.integer({ min: 1, max: 720 }).map(minutes) }),
    fc.tuple(fc.constantFrom('501', '7', '7203'), fc.constantFrom('502', '8', '7211')).map(([from, to]) => ({ kind: 'move' as const, from: jobNo(from), to: jobNo(to) })),
    fc.record({ kind: is('adopt'), person, role: fc.option(fc.constantFrom(...ROLES)) }),
    fc.record({ kind: is('next'), ...subject }),
    fc.record({ kind: is('may'), ...subject, deed: fc.constantFrom(...DEEDS) }),
    fc.record({ kind: is('undo'), entry: fc.option(fc.integer({ min: 1, max: 9_999_999 }).map(entryNo)) }),
  );

  test('says exactly the command it was made from', () => {
    fc.assert(
      fc.property(command, (one) => {
        expect(readLine(lineOf(one), SHOP)).toEqual({ ok: true, command: one });
      }),
      { numRuns: 2000 },
    );
  });

  test('off since nobody knows when', () => {
    const one: EntryCommand = { kind: 'off', job: jobNo('501'), joint: null, lamp: lampName('A'), since: 'unknown', when: { earliest: SHOP.now, latest: SHOP.now, stated: false, confirmed: false } };
    expect(readLine(lineOf(one), SHOP)).toEqual({ ok: true, command: one });
  });
});
