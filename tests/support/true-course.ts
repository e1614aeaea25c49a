import fc from 'fast-check';
import type { SheetRow } from '../../src/cure/card.js';
import { celsius, earlier, instant, kelvinFromCelsius, later, minutesBetween, type Celsius, type Instant } from '../../src/cure/units.js';

/** So long the joint truly changed in a straight line from one temperature to another. */
export interface TruePiece {
  readonly from: Instant;
  readonly to: Instant;
  readonly begins: number;
  readonly ends: number;
}

/** How far above what is assumed the truth lies; straight lines between the points, and what it is where nothing is assumed. */
export interface Surplus {
  readonly points: readonly { readonly seconds: number; readonly degrees: number }[];
  readonly unknown: number;
}

export const anySurplus: fc.Arbitrary<Surplus> = fc.record({
  points: fc.array(
    fc.record({ seconds: fc.oneof(fc.integer({ min: 0, max: 36_000 }), fc.integer({ min: 0, max: 400_000 })), degrees: fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 50 }).map((tenths) => tenths / 10), fc.integer({ min: 0, max: 60 })) }),
    { maxLength: 5 },
  ).map((points) => [...points].sort((a, b) => a.seconds - b.seconds)),
  unknown: fc.integer({ min: -10, max: 60 }),
});

/** What somebody counts with: a temperature from this moment on, or null for nothing. */
export interface Assumed {
  readonly from: Instant;
  readonly temperature: Celsius | null;
}

/** A true course that is nowhere colder than assumed and nowhere above the maximum. */
export function warmerCourse(assumed: readonly Assumed[], until: Instant, surplus: Surplus, maximum: number): TruePiece[] {
  return assumed.flatMap(({ from, temperature }, index) => {
    const end = earlier(assumed[index + 1]?.from ?? until, until);
    const origin = assumed[0]?.from ?? from;
    const warm = (at: Instant): number => Math.min(maximum, (temperature ?? surplus.unknown) + degreesAt(surplus, (at - origin) / 1000));
    const edges = [from, ...surplus.points.map((point) => instant(origin + point.seconds * 1000)).filter((at) => at > from && at < end), end];
    return edges.slice(1).flatMap((to, piece) => {
      const begin = edges[piece] ?? from;
      return to > begin ? [{ from: begin, to, begins: warm(begin), ends: warm(to) }] : [];
    });
  });
}

function degreesAt({ points }: Surplus, seconds: number): number {
  const next = points.findIndex((point) => point.seconds >= seconds);
  const [before, after] = next === -1 ? [points.at(-1), points.at(-1)] : [points[next - 1] ?? points[next], points[next]];
  if (before === undefined || after === undefined) return 0;
  return after.seconds === before.seconds ? after.degrees : before.degrees + ((seconds - before.seconds) / (after.seconds - before.seconds)) * (after.degrees - before.degrees);
}

/** Nodes and weights of Gauss-Legendre with five points on [-1, 1] (DLMF 3.5): exact up to the ninth power. */
const NODES = [0, -0.5384693101056831, 0.5384693101056831, -0.906179845938664, 0.906179845938664];
const WEIGHTS = [0.5688888888888889, 0.47862867049936647, 0.47862867049936647, 0.23692688505618908, 0.23692688505618908];
/** °C; over so little a rate is as good as a polynomial. */
const WIDEST = 8;

/** Integral over time, in minutes, of something that depends on the temperature alone and is smooth between the kinks. */
export function integralAlong(course: readonly TruePiece[], kinks: readonly number[], of: (temperature: number) => number): number {
  return course.reduce((sum, piece) => sum + minutesBetween(piece.from, piece.to) * meanOver(piece, kinks, of), 0);
}

function meanOver({ begins, ends }: TruePiece, kinks: readonly number[], of: (temperature: number) => number): number {
  if (begins === ends) return of(begins);
  const parts = Math.ceil(Math.abs(ends - begins) / WIDEST);
  const even = Array.from({ length: parts + 1 }, (_, index) => index / parts);
  const crossings = kinks.map((kink) => (kink - begins) / (ends - begins)).filter((part) => part > 0 && part < 1);
  const edges = [...even, ...crossings].sort((a, b) => a - b);
  let sum = 0;
  for (const [index, edge] of edges.slice(1).entries()) {
    const start = edges[index] ?? 0;
    const [middle, half] = [(start + edge) / 2, (edge - start) / 2];
    for (const [at, node] of NODES.entries()) sum += half * (WEIGHTS[at] ?? 0) * of(begins + (middle + half * node) * (ends - begins));
  }
  return sum;
}

const onlyFrom = (course: readonly TruePiece[], start: Instant): TruePiece[] =>
  course.flatMap((piece) => {
    if (piece.to <= start) return [];
    const from = later(piece.from, start);
    const part = (from - piece.from) / (piece.to - piece.from);
    return [{ ...piece, from, begins: piece.begins + part * (piece.ends - piece.begins) }];
  });

/** True minutes at or above a temperature since a moment. */
export const minutesAbove = (course: readonly TruePiece[], temperature: number, since: Instant): number =>
  integralAlong(onlyFrom(course, since), [temperature], (at) => (at >= temperature ? 1 : 0));

/** What a joint has truly earned of the rows: the inverse of the minutes, Arrhenius between the rows. */
export function trulyEarned(rows: readonly SheetRow[], course: readonly TruePiece[]): number {
  const sorted = [...rows].sort((a, b) => a.temperature - b.temperature);
  return integralAlong(course, sorted.map((row) => row.temperature), (temperature) => trueRate(sorted, temperature));
}

/** Share per minute: Arrhenius between rows (coldest first), nothing below the coldest, no more than the hottest. */
export function trueRate(rows: readonly SheetRow[], temperature: number): number {
  const index = rows.findIndex((row) => row.temperature >= temperature);
  const hot = index === -1 ? rows.at(-1) : rows[index];
  if (hot === undefined) return 0;
  if (temperature >= hot.temperature) return 1 / hot.minutes;
  const cold = rows[index - 1];
  if (cold === undefined) return 0;
  const inverse = (at: number): number => 1 / kelvinFromCelsius(celsius(at));
  const part = (inverse(temperature) - inverse(cold.temperature)) / (inverse(hot.temperature) - inverse(cold.temperature));
  return (cold.minutes / hot.minutes) ** part / cold.minutes;
}
