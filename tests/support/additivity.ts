import fc from 'fast-check';
import type { SheetRow } from '../../src/cure/card.js';
import { minutesAt } from '../../src/cure/rows.js';
import { celsius, minutes, type Celsius, type Minutes } from '../../src/cure/units.js';
import { convertedBy, isothermalMinutes, minutesUntil, type CureModel } from './cure-model.js';
import { creditedMinutes, type SteadyStretch } from './steady-stretches.js';

/** How far the sum of minutes / row minutes is from a model over many temperature courses. */
export interface AdditivityError {
  readonly courses: number;
  /** Courses on which it is announced before the model is there. */
  readonly early: number;
  /** The worst of them as a share of the true wait. */
  readonly worstShare: number;
  /** The lowest conversion the model has when it is announced. */
  readonly lowestConversion: number;
  /** The highest sum when the model is there: where 1 would have to lie for no course to be early. */
  readonly highestSum: number;
}

/** A course before it is put into a model's time: the share of the steady wait that each temperature lasts. */
export type Course = readonly { readonly temperature: number; readonly share: number }[];

const SEED = 20_260_302;
/** Shares below this are dust of the quadrature. */
const DUST = 1e-9;

const share = fc.double({ min: 0.02, max: 0.9, noNaN: true });
const at = (temperature: number) => share.map((part) => ({ temperature, share: part }));
const among = (temperatures: fc.Arbitrary<number>) => fc.array(fc.record({ temperature: temperatures, share }), { minLength: 2, maxLength: 6 });

/** Lamp up in stages; lamp off in between; any jumps between printed rows. */
const jumps = (printed: readonly number[]): fc.Arbitrary<Course> =>
  fc.oneof(fc.tuple(at(20), at(30), at(60)), fc.tuple(at(20), at(60), at(20)), fc.tuple(at(30), at(60), at(20), at(60)), among(fc.constantFrom(...printed)));

/** The same number of courses at every call, always the same ones. `anywhere`: temperatures between the rows too. */
export function courses(printed: readonly number[], count: number, anywhere: boolean): Course[] {
  const range = { min: Math.min(...printed), max: Math.max(...printed), noNaN: true };
  return fc.sample(anywhere ? among(fc.double(range)) : jumps(printed), { seed: SEED, numRuns: count });
}

/** Rows of a sheet that states the model's own steady times. */
export const rowsOf = (model: CureModel, conversion: number, printed: readonly number[]): SheetRow[] =>
  printed.map((temperature) => ({ temperature: celsius(temperature), minutes: isothermalMinutes(model, celsius(temperature), conversion) }));

/** Lets our engine announce `conversion` on every course and asks the model when it is really there. */
export function additivityError(model: CureModel, conversion: number, rows: readonly SheetRow[], all: readonly Course[]): AdditivityError {
  const steady = new Map(rows.map((row) => [row.temperature, row.minutes]));
  const steadyMinutes = (temperature: Celsius): Minutes => steady.get(temperature) ?? isothermalMinutes(model, temperature, conversion);
  let [early, worstShare, lowestConversion, highestSum] = [0, 0, conversion, 1];
  for (const course of all) {
    const stretches = inModelTime(course, steadyMinutes);
    const announced = creditedMinutes(rows, stretches);
    const exact = minutesUntil(model, conversion, stretches);
    const ahead = 1 - announced / exact;
    if (ahead <= DUST) continue;
    early += 1;
    worstShare = Math.max(worstShare, ahead);
    lowestConversion = Math.min(lowestConversion, convertedBy(model, until(stretches, announced)));
    highestSum = Math.max(highestSum, sumOf(rows, until(stretches, exact)));
  }
  return { courses: all.length, early, worstShare, lowestConversion, highestSum };
}

const sumOf = (rows: readonly SheetRow[], stretches: readonly SteadyStretch[]): number =>
  stretches.reduce((sum, stretch) => sum + stretch.minutes / (minutesAt(rows, stretch.temperature) ?? Infinity), 0);

/** The last temperature goes on for good. */
function inModelTime(course: Course, steadyMinutes: (temperature: Celsius) => Minutes): SteadyStretch[] {
  return course.map(({ temperature, share: part }, index) => ({
    temperature: celsius(temperature),
    minutes: minutes(index === course.length - 1 ? Infinity : part * steadyMinutes(celsius(temperature))),
  }));
}

function until(stretches: readonly SteadyStretch[], end: number): SteadyStretch[] {
  let left = end;
  return stretches.map((stretch) => {
    const lasts = Math.min(left, stretch.minutes);
    left -= lasts;
    return { ...stretch, minutes: minutes(lasts) };
  });
}
