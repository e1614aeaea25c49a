import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MaterialCard, SheetRow } from '../../src/cure/card.js';
import { forecast } from '../../src/cure/forecast.js';
import type { HeatEvent, JointHistory } from '../../src/cure/history.js';
import { celsius, instant, minutes, type Celsius, type Instant } from '../../src/cure/units.js';
import { cardNamed } from '../support/card-shelf.js';
import { anyCard, fallingRows } from '../support/random-card.js';
import { anyStart, randomHistory } from '../support/random-history.js';

const RUNS = { numRuns: 10_000 };
/** Ten thousand histories take a while where many share a processor. */
const PATIENCE = 120_000;
/** Rounding dust, in milliseconds. */
const DUST = 1;
const MINUTE = 60_000;

/** Temperatures are told as rows: -1 is below the coldest, the number of rows is above the hottest. */
interface Told {
  readonly at: Instant;
  readonly row: number;
}

/** A joint at whose every moment some row of the card counts exactly, so that no logarithm is needed. */
interface PlainJoint {
  readonly rows: readonly SheetRow[];
  readonly marginPercent: number;
  readonly start: Instant;
  readonly air: readonly Told[];
  readonly readings: readonly Told[];
  /** The heat is lost from here on, or never. */
  readonly lost: Instant | null;
  readonly losing: readonly HeatEvent[];
}

const gap = fc.oneof(fc.integer({ min: 1, max: 7_200_000 }), fc.integer({ min: 1, max: 120 }).map((length) => length * MINUTE));

const plainJoint: fc.Arbitrary<PlainJoint> = fc.tuple(fallingRows, anyStart).chain(([rows, start]) => {
  const told = fc.record({ gap, row: fc.integer({ min: -1, max: rows.length }) });
  const series = (maxLength: number, from: number) => fc.array(told, { maxLength }).map((list) => list.map(({ row }, index) => ({ row, at: instant(list.slice(0, index + 1).reduce((sum, one) => sum + one.gap, from)) })));
  return fc
    .record({ first: fc.integer({ min: -1, max: rows.length }), air: series(3, start), readings: series(4, start), loss: fc.constantFrom('none', 'off', 'found off', 'seen, then found off'), after: fc.tuple(gap, gap), marginPercent: fc.constantFrom(0, 0, 7, 25) })
    .map(({ first, air, readings, loss, after: [one, other], marginPercent }) => {
      const seen = instant((readings.at(-1)?.at ?? start) + one);
      const found = instant(seen + other);
      return { rows, marginPercent, start, air: [{ at: start, row: first }, ...air], readings, ...lossOf(loss, readings.at(-1)?.at ?? start, seen, found) };
    });
});

function lossOf(loss: string, last: Instant, seen: Instant, found: Instant): Pick<PlainJoint, 'lost' | 'losing'> {
  switch (loss) {
    case 'off':
      return { lost: found, losing: [{ kind: 'lamp-off', at: found }] };
    case 'found off':
      return { lost: last, losing: [{ kind: 'lamp-found-off', at: found }] };
    case 'seen, then found off':
      return { lost: seen, losing: [{ kind: 'lamp-on', at: seen }, { kind: 'lamp-found-off', at: found }] };
    default:
      return { lost: null, losing: [] };
  }
}

/** The row that counts: air before the first reading, the colder of two between them, the last until the heat is lost. */
function rowAt({ air, readings, lost }: PlainJoint, at: number): number {
  const around = air.findLast((one) => one.at <= at)?.row ?? -1;
  const before = readings.findLast((one) => one.at <= at)?.row;
  const after = readings.find((one) => one.at > at)?.row;
  const inAir = before === undefined || (lost !== null && at >= lost);
  return Math.min(before ?? Infinity, after ?? Infinity, inAir ? around : Infinity);
}

interface Fraction {
  readonly over: bigint;
  readonly under: bigint;
}

/** Milliseconds from the start until the shares are 1, as an exact fraction; null: never. `wholes` by row, 0: nothing counts. */
function exactWait(joint: PlainJoint, wholes: (row: number) => bigint): Fraction | null {
  const edges = [...new Set([joint.start, ...joint.air.map(({ at }) => at), ...joint.readings.map(({ at }) => at), ...(joint.lost === null ? [] : [joint.lost])])].sort((a, b) => a - b);
  const distinct = [...new Set(edges.map((edge) => wholes(rowAt(joint, edge))))].filter((whole) => whole > 0n);
  const under = distinct.reduce((product, whole) => product * whole, 1n);
  let missing = under;
  for (const [index, edge] of edges.entries()) {
    const whole = wholes(rowAt(joint, edge));
    if (whole === 0n) continue;
    const next = edges[index + 1];
    const earned = next === undefined ? missing : (BigInt(next - edge) * under) / whole;
    if (earned >= missing) return { over: BigInt(edge - joint.start) * under + missing * whole, under };
    missing -= earned;
  }
  return null;
}

const temperatureOf = (rows: readonly SheetRow[], row: number): Celsius => celsius(rows[row]?.temperature ?? (row < 0 ? (rows[0]?.temperature ?? 0) - 3 : (rows.at(-1)?.temperature ?? 0) + 7));

function historyOf({ rows, start, air, readings, losing }: PlainJoint): JointHistory {
  const heat = readings.map(({ at, row }): HeatEvent => ({ kind: 'reading', at, value: temperatureOf(rows, row) }));
  return { start, depthMillimetres: null, heat: [...heat, ...losing], air: air.map(({ at, row }) => ({ from: at, temperature: temperatureOf(rows, row), humidity: null, vapour: null, source: 'air reading' })) };
}

/** What the sheet prints for a row, in milliseconds, with the margin; hotter than the hottest earns no more. */
const printed = ({ rows, marginPercent }: PlainJoint, row: number): bigint =>
  row < 0 ? 0n : BigInt(rows[Math.min(row, rows.length - 1)]?.minutes ?? 0) * 600n * BigInt(100 + marginPercent);

function expectExact(joint: PlainJoint, law: MaterialCard['milestones'][number]['laws'][number], wholes: (row: number) => bigint): void {
  const card: MaterialCard = { ...cardNamed('P1'), maxPanel: null, marginPercent: joint.marginPercent, milestones: [{ kind: 'handling', laws: [law] }] };
  const [milestone] = forecast(card, historyOf(joint));
  const exact = exactWait(joint, wholes);
  if (exact === null) {
    expect(milestone?.dueAt).toBeNull();
    return;
  }
  const due = joint.start + Number((exact.over * 1000n) / exact.under) / 1000;
  expect(Math.abs((milestone?.progress.due ?? NaN) - due)).toBeLessThan(DUST);
  const rounded = milestone?.dueAt ?? NaN;
  expect([rounded % MINUTE, rounded >= due - DUST, rounded < due + MINUTE]).toEqual([0, true, true]);
}

describe('the sum of shares, against the same sum in whole milliseconds and fractions', () => {
  it('is exact to the millisecond for minutes by rows, and rounded up to the minute from there', () => {
    fc.assert(
      fc.property(plainJoint, (joint) => {
        expectExact(joint, { law: 'credit', rows: joint.rows }, (row) => printed(joint, row));
      }),
      RUNS,
    );
  }, PATIENCE);

  it('is exact to the millisecond for minutes above a temperature', () => {
    fc.assert(
      fc.property(plainJoint, fc.nat(), fc.integer({ min: 1, max: 900 }), (joint, pick, length) => {
        const row = pick % joint.rows.length;
        expectExact(joint, { law: 'above', temperature: temperatureOf(joint.rows, row), minutes: minutes(length) }, (at) => (at >= row ? BigInt(length) * 60_000n : 0n));
      }),
      RUNS,
    );
  }, PATIENCE);
});

describe('rounding', () => {
  it('puts every milestone on a whole minute, never before its exact moment and less than a minute after it', () => {
    fc.assert(
      fc.property(anyCard, randomHistory, (card, history) => {
        for (const { dueAt, progress } of forecast(card, history)) {
          if (dueAt === null || progress.due === null) {
            expect([dueAt, progress.due]).toEqual([null, null]);
            continue;
          }
          expect([dueAt % MINUTE, dueAt >= progress.due - DUST, dueAt < progress.due + MINUTE]).toEqual([0, true, true]);
        }
      }),
      RUNS,
    );
  }, PATIENCE);
});
