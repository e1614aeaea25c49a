import { integral } from './quadrature.js';
import { steadyRate, type RateTable } from './rate-table.js';
import { celsius, minutes, type Celsius, type Minutes } from './units.js';

/** How much metal a lamp has to warm. */
export const BUILD_UPS = ['thin-skin', 'two-sheets-with-flange'] as const;
export type BuildUp = (typeof BUILD_UPS)[number];

/** First-order time constants until two readings show a better one. Common practice, no source. */
export const TIME_CONSTANTS: Readonly<Record<BuildUp, Minutes>> = {
  'thin-skin': minutes(8),
  'two-sheets-with-flange': minutes(20),
};

/** T(t) = towards - (towards - from) exp(-t / timeConstant), from switch-on. */
export interface WarmUp {
  readonly from: Celsius;
  readonly towards: Celsius;
  readonly timeConstant: Minutes;
}

/** After so many time constants the joint is where it was going: 2e-11 of the way is left. */
const ARRIVED = 25;

/** Minutes from switch-on until the joint counts as arrived. */
export const warmUpLasts = (warmUp: WarmUp): Minutes => minutes(ARRIVED * warmUp.timeConstant);

/** Temperature some minutes after switch-on. */
export function temperatureAfter(warmUp: WarmUp, after: Minutes): Celsius {
  if (after >= warmUpLasts(warmUp)) return warmUp.towards;
  return celsius(warmUp.towards - (warmUp.towards - warmUp.from) / Math.exp(after / warmUp.timeConstant));
}

/** Share of the wait that the first minutes of a warm-up earn: Gauss-Legendre between the kinks of the rate. */
export function warmUpEarned(table: RateTable, warmUp: WarmUp, length: Minutes): number {
  const arrival = warmUpLasts(warmUp);
  const moving = Math.min(length, arrival);
  const cuts = [...panelEnds(warmUp.timeConstant), ...table.kinks.flatMap((kink) => timeOf(warmUp, kink) ?? [])];
  const edges = [0, ...cuts.filter((cut) => cut > 0 && cut < moving).sort((one, other) => one - other), moving];
  const rate = (after: number): number => steadyRate(table, temperatureAfter(warmUp, minutes(after)));
  const earned = edges.slice(1).reduce((sum, edge, index) => sum + integral(rate, edges[index] ?? 0, edge), 0);
  return length > arrival ? earned + (length - arrival) * steadyRate(table, warmUp.towards) : earned;
}

/** Time constant behind two readings on the way to a temperature, or null where they show no such way. */
export function timeConstantFrom(first: Celsius, second: Celsius, between: Minutes, towards: Celsius): Minutes | null {
  const nearer = (towards - first) / (towards - second);
  return between > 0 && nearer > 1 && nearer < Infinity ? minutes(between / Math.log(nearer)) : null;
}

/** Where a warm-up is going that passes through two temperatures. */
export function towardsThrough(first: Celsius, second: Celsius, between: Minutes, timeConstant: Minutes): Celsius {
  return celsius(first + (second - first) * (1 + 1 / Math.expm1(between / timeConstant)));
}

/** Minutes after switch-on at which a temperature is passed, or null. */
function timeOf(warmUp: WarmUp, temperature: Celsius): number | null {
  const nearer = (warmUp.towards - warmUp.from) / (warmUp.towards - temperature);
  return nearer > 1 && nearer < Infinity ? warmUp.timeConstant * Math.log(nearer) : null;
}

/** The longer ago the switch-on, the less changes: panels grow with time. */
const panelEnds = (timeConstant: Minutes): number[] => [1, 2, 4, 8, 16].map((count) => count * timeConstant);
