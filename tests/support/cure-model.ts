import { GAS_CONSTANT } from '../../src/cure/arrhenius.js';
import { inverseOf } from '../../src/cure/kinetics.js';
import { minutes, type Celsius, type Minutes } from '../../src/cure/units.js';
import { integralOver } from './quadrature.js';
import type { SteadyStretch } from './steady-stretches.js';

/**
 * Conversion a of an adhesive as da/dt = (k1 + k2 a^m)(1 - a)^n per minute, k = A exp(-E/RT): what a milestone "conversion
 * a is reached" would really do. Oracles for tests; the program itself knows no conversion.
 */
export interface CureModel {
  readonly a1: number;
  readonly e1: number;
  readonly a2: number;
  readonly e2: number;
  readonly m: number;
  readonly n: number;
}

/** KN and KS1 as published, KS2 with published energies and pre-factors of our own: sources stand beside the checks of references.json. */
export const MODELS = {
  KN: { a1: 1.56e7, e1: 49_200, a2: 0, e2: 0, m: 1, n: 0.95 },
  KS1: { a1: 1e10, e1: 70_000, a2: 1e13, e2: 85_000, m: 0.45, n: 1 },
  KS2: { a1: 2.10665e14, e1: 102_508, a2: 1.87945e8, e2: 58_576, m: 1, n: 2 },
} as const satisfies Readonly<Record<string, CureModel>>;
export type ModelName = keyof typeof MODELS;
export const MODEL_NAMES = ['KN', 'KS1', 'KS2'] as const satisfies readonly ModelName[];

/**
 * The conversion is carried as u with 1 - a = exp(-u⁴): the integrand is then smooth at both ends.
 * Beyond u = 2.4 less than 4e-15 is left.
 */
const LAST = 2.4;
const PANEL = 0.5;
const toU = (conversion: number): number => (-Math.log1p(-conversion)) ** 0.25;
const toConversion = (u: number): number => -Math.expm1(-(u ** 4));

/** Minutes per du at one temperature. */
function pace(model: CureModel, temperature: Celsius): (u: number) => number {
  const perR = inverseOf(temperature) / GAS_CONSTANT;
  const k1 = model.a1 * Math.exp(-model.e1 * perR);
  const k2 = model.a2 * Math.exp(-model.e2 * perR);
  return (u) => {
    const x = u ** 4;
    return (4 * u ** 3 * Math.exp((model.n - 1) * x)) / (k1 + k2 * (-Math.expm1(-x)) ** model.m);
  };
}

const between = (of: (u: number) => number, from: number, to: number): number => integralOver(of, from, to, Math.max(1, Math.ceil((to - from) / PANEL)));

/** Minutes from one conversion to another at one temperature. */
export const isothermalMinutes = (model: CureModel, temperature: Celsius, to: number, from = 0): Minutes =>
  minutes(between(pace(model, temperature), toU(from), toU(to)));

/** Conversion after so long at one temperature; `below` is not passed if the caller knows better. */
export function convertedAfter(model: CureModel, stretch: SteadyStretch, from = 0, below?: number): number {
  const of = pace(model, stretch.temperature);
  const start = toU(from);
  let [low, high, u] = [start, below === undefined ? LAST : toU(below), start];
  let left: number = stretch.minutes;
  if (below === undefined && left >= between(of, low, high)) return toConversion(LAST);
  // Newton's method, held between two bounds; every step measures from the start, so that no error adds up.
  for (let round = 0; round < 100 && Math.abs(left) > 1e-12 * stretch.minutes; round += 1) {
    const wanted = u + left / of(u);
    const next = wanted > low && wanted < high ? wanted : (low + high) / 2;
    if (next === u) break;
    u = next;
    left = stretch.minutes - between(of, start, u);
    if (left > 0) low = u;
    else high = u;
  }
  return toConversion(u);
}

/** Conversion after stretches at several temperatures. */
export const convertedBy = (model: CureModel, stretches: readonly SteadyStretch[]): number =>
  stretches.reduce((conversion, stretch) => convertedAfter(model, stretch, conversion), 0);

/** Minutes from the start until a conversion is reached; the last stretch goes on. */
export function minutesUntil(model: CureModel, conversion: number, stretches: readonly SteadyStretch[]): Minutes {
  let [reached, passed] = [0, 0];
  for (const [index, stretch] of stretches.entries()) {
    const missing = isothermalMinutes(model, stretch.temperature, conversion, reached);
    if (missing <= stretch.minutes || index === stretches.length - 1) return minutes(passed + missing);
    reached = convertedAfter(model, stretch, reached, conversion);
    passed += stretch.minutes;
  }
  throw new Error('no stretches');
}
