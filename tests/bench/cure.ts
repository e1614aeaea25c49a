import { append, dueIfHeld, progressLine, type ProgressLine, type TemperaturePoint } from '../../src/cure/progress-line.js';
import { rateTable } from '../../src/cure/rate-table.js';
import type { SheetRow } from '../../src/cure/card.js';
import { celsius, instant, minutes, MILLISECONDS_PER_MINUTE } from '../../src/cure/units.js';
import { passes, solvedShare } from '../support/expected-oracle.js';
import { odeSolver } from '../support/ode-solver.js';
import { ratesOf } from './rounds.js';
import { quickRate, solverForecast, solverStep, solverTail, type Packed } from './solver-forecast.js';

/** Invented figures. */
const MILESTONES: readonly (readonly SheetRow[])[] = [
  { 15: 450, 20: 300, 30: 150, 40: 75, 65: 25 },
  { 15: 3120, 20: 2160, 30: 1080, 40: 480, 65: 80 },
  { 15: 1440, 23: 720, 60: 60 },
].map((figures) => Object.entries(figures).map(([temperature, wait]) => ({ temperature: celsius(Number(temperature)), minutes: minutes(wait) })));
const TABLES = MILESTONES.map(rateTable);
const RATES = MILESTONES.map(quickRate);
const POINTS = 500;
const LARGEST_ERROR = 1e-6;
const STEPS = 64;

/** A joint that is read every five minutes or so while a lamp comes and goes; never below the coldest row, where a solver meets a jump. */
function historyOf(length: number, apart = 1): Packed {
  let seed = 7;
  const random = (): number => (seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648) / 2_147_483_648;
  let time = 0;
  return Float64Array.from(Array.from({ length }, () => [(time += (3 + 4 * random()) * apart), 33 + 14 * Math.sin(time / 90) + 4 * random()]).flat());
}

const value = (packed: Packed, index: number): number => packed[index] ?? NaN;

/** From times and temperatures to the points that the engine reads. */
function unpacked(packed: Packed, from = 0): TemperaturePoint[] {
  const points: TemperaturePoint[] = [];
  for (let index = 2 * from; index < packed.length; index += 2) points.push(pointAt(packed, index));
  return points;
}

const pointAt = (packed: Packed, index: number): TemperaturePoint => ({ at: instant(value(packed, index) * MILLISECONDS_PER_MINUTE), temperature: celsius(value(packed, index + 1)) });

const START: TemperaturePoint = { at: instant(0), temperature: celsius(20) };

function linesOf(packed: Packed): ProgressLine[] {
  const first = pointAt(packed, 0);
  const rest = unpacked(packed, 1);
  return TABLES.map((table) => progressLine(table, first, rest));
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0);
const forecast = (packed: Packed): number => sumOf(linesOf(packed).map((line) => dueIfHeld(line) ?? 0));

function trueShares(packed: Packed): number[] {
  return MILESTONES.map((rows) => {
    let sum = 0;
    for (let index = 2; index < packed.length; index += 2) {
      const [t0, c0, t1, c1] = [value(packed, index - 2), value(packed, index - 1), value(packed, index), value(packed, index + 1)];
      sum += solvedShare(rows, (minute) => c0 + ((c1 - c0) * minute) / (t1 - t0), t1 - t0, passes(rows, c0, c1, t1 - t0));
    }
    return sum;
  });
}

const errorOf = (shares: readonly number[], truth: readonly number[]): number => Math.max(...shares.map((share, index) => Math.abs(share / (truth[index] ?? NaN) - 1)));

/** The loosest tolerance with which the solver is as exact as asked; null: with none. */
function loosest(packed: Packed, truth: readonly number[], restart: boolean): { readonly tolerance: number; readonly error: number } | null {
  for (let digits = 2; digits <= 13; digits += 0.5) {
    const tolerance = 10 ** -digits;
    const error = errorOf(solverForecast(RATES, packed, tolerance, restart).shares, truth);
    if (error <= LARGEST_ERROR) return { tolerance, error };
  }
  return null;
}

/** The loosest tolerance with which the solver is as exact as asked about the share of each single new stretch. */
function loosestStep(): number {
  const stretches = newStretches();
  const truths = stretches.map(trueShares);
  const none = MILESTONES.map(() => 0);
  for (let digits = 2; digits <= 13; digits += 0.5) {
    const solver = odeSolver(RATES.length, 10 ** -digits);
    if (stretches.every((stretch, index) => errorOf(solverStep(solver, RATES, none, stretch), truths[index] ?? []) <= LARGEST_ERROR)) return 10 ** -digits;
  }
  throw new Error('The solver does not become exact enough.');
}

/** Two points each. */
function newStretches(): Packed[] {
  const packed = historyOf(STEPS + 1);
  return Array.from({ length: STEPS }, (_, index) => packed.slice(2 * index, 2 * index + 4));
}

/** Nothing but the next reading, some minutes later, given to a line that has all readings before it: an hour, however many. */
function stepper(length: number): () => number {
  const lines = linesOf(historyOf(length, 12 / length));
  if (lines.some((line) => line.due !== null)) throw new Error('Nothing is due yet, or a step would have nothing to compute.');
  const now = lines[0]?.last.at ?? 0;
  const next = unpacked(historyOf(STEPS)).map(({ temperature }, index) => ({ at: instant(now + (3 + (index % 4)) * MILLISECONDS_PER_MINUTE), temperature }));
  let turn = 0;
  return () => {
    const point = next[(turn = (turn + 1) % STEPS)] ?? START;
    let sum = 0;
    for (const line of lines) sum += dueIfHeld(append(line, point)) ?? 0;
    return sum;
  };
}

/** The solver with nothing but the new stretch; `tail`: and on to the due times, where the hold is not divided out by hand. */
function solverStepper(tolerance: number, tail: boolean): () => number {
  const solver = odeSolver(RATES.length, tolerance);
  const stretches = newStretches();
  let turn = 0;
  return () => {
    const stretch = stretches[(turn = (turn + 1) % STEPS)] ?? packed;
    const shares = solverStep(solver, RATES, [0.2, 0.1, 0.15], stretch);
    return sumOf(tail ? solverTail(solver, RATES, shares, stretch) : shares);
  };
}

const packed = historyOf(POINTS);
const truth = trueShares(packed);
const error = errorOf(linesOf(packed).map((line) => line.share), truth);
const whole = loosest(packed, truth, false);
const restarted = loosest(packed, truth, true);
if (restarted === null) throw new Error('The solver does not become exact enough.');
const stepTolerance = loosestStep();
const dues = solverForecast(RATES, packed, restarted.tolerance, true).dues;
const dueApart = Math.max(...linesOf(packed).map((line, index) => Math.abs((line.due ?? NaN) / MILLISECONDS_PER_MINUTE - (dues[index] ?? NaN))));

const solve = (tolerance: number, restart: boolean) => (): number => sumOf(solverForecast(RATES, packed, tolerance, restart).shares);
const [ours = NaN, byRestarts = NaN, inOneRun = 0] = ratesOf([() => forecast(packed), solve(restarted.tolerance, true), ...(whole === null ? [] : [solve(whole.tolerance, false)])]);
const [step100 = NaN, step1000 = NaN, step10000 = NaN, solverOne = NaN, solverStretch = NaN] = ratesOf([stepper(100), stepper(1000), stepper(10_000), solverStepper(stepTolerance, true), solverStepper(stepTolerance, false)]);
const steps = [step100, step1000, step10000];
const best = Math.max(inOneRun, byRestarts);

const result = {
  points: POINTS,
  milestones: MILESTONES.length,
  forecastsPerSecond: { ours, odexRestarted: byRestarts, odexInOneRun: whole === null ? null : inOneRun, ratio: ours / best },
  relativeError: { ours: error, odexRestarted: restarted.error, odexInOneRun: whole?.error ?? null, dueMinutesApart: dueApart },
  tolerance: { odexRestarted: restarted.tolerance, odexInOneRun: whole?.tolerance ?? null, odexNewReading: stepTolerance },
  newReadingsPerSecond: { at100: step100, at1000: step1000, at10000: step10000, odex: solverOne, odexShareOnly: solverStretch, ratio: Math.min(...steps) / solverOne, ratioShareOnly: Math.min(...steps) / solverStretch, spread: Math.max(...steps) / Math.min(...steps) - 1 },
};

const figure = (rate: number): string => Math.round(rate).toLocaleString('en').padStart(12);
const goal = (reached: boolean): string => (reached ? 'reached' : 'NOT reached');
const exact = (found: typeof whole): string => (found === null ? 'not exact enough with any tolerance' : `${found.error.toExponential(1)}  (tolerance ${found.tolerance.toExponential(1)})`);
process.stdout.write(`
${POINTS} points, ${MILESTONES.length} milestones, unpacking included   forecasts per processor second    relative error
  cureclerk                                    ${figure(ours)}    ${error.toExponential(1)}
  odex, restarted at every point               ${figure(byRestarts)}    ${exact(restarted)}
  odex, one run over the history               ${figure(inOneRun)}    ${exact(whole)}
  ratio to the faster one: ${result.forecastsPerSecond.ratio.toFixed(0)} (goal 100: ${goal(result.forecastsPerSecond.ratio >= 100)}); due times at most ${dueApart.toExponential(1)} min apart

one new reading, ${MILESTONES.length} milestones                    readings per processor second
  cureclerk after    100 points                ${figure(step100)}
  cureclerk after  1,000 points                ${figure(step1000)}
  cureclerk after 10,000 points                ${figure(step10000)}
  odex, the last stretch and on to the end     ${figure(solverOne)}
  odex, the last stretch, share without end    ${figure(solverStretch)}  (tolerance ${stepTolerance.toExponential(1)}; ratio ${result.newReadingsPerSecond.ratioShareOnly.toFixed(0)})
  ratio ${result.newReadingsPerSecond.ratio.toFixed(0)} (goal 200: ${goal(result.newReadingsPerSecond.ratio >= 200)}); spread ${(100 * result.newReadingsPerSecond.spread).toFixed(0)} % (goal 25: ${goal(result.newReadingsPerSecond.spread <= 0.25)})

${JSON.stringify(result)}
`);
