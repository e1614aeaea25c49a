import { append, dueIfHeld } from '../../src/cure/progress-line.js';
import { progressLines, type PackedPoints } from '../../src/cure/progress-lines.js';
import { rateTable } from '../../src/cure/rate-table.js';
import { sharedTables } from '../../src/cure/shared-table.js';
import { celsius, instant, MILLISECONDS_PER_MINUTE } from '../../src/cure/units.js';
import { errorOf, historyOf, inMinutes, MILESTONES, stretchesOf, trueShares } from './history.js';
import { report, type Line } from './report.js';
import { comparedWith, ratesOf, type Compared } from './rounds.js';
import { forecasters, RATES, steppers, type Contestant } from './solvers.js';
import { odexHold } from './solver-hold.js';
import { sureSide } from './sure-side.js';

const TABLES = sharedTables(MILESTONES.map((rows) => rateTable(rows)));
const POINTS = 500;
const STEPS = 64;
const packed = historyOf(POINTS);
const packedMinutes = inMinutes(packed);

/** From packed points to due times. */
function ourForecast(): number {
  let sum = 0;
  for (const line of progressLines(TABLES, packed)) sum += dueIfHeld(line) ?? 0;
  return sum;
}

const theirForecast = ({ forecast }: Contestant) => (): number => {
  const { shares, dues } = forecast(packedMinutes);
  let sum = 0;
  for (let milestone = 0; milestone < shares.length; milestone += 1) sum += (shares[milestone] ?? NaN) + (dues[milestone] || 0);
  return sum;
};

/** Nothing but the next reading, some minutes later, given to lines that have all readings before it: an hour, however many. */
function ourStep(length: number): () => number {
  const lines = progressLines(TABLES, historyOf(length, 7, 12 / length));
  if (lines.some((line) => line.due !== null)) throw new Error('Nothing is due yet, or a step would have nothing to compute.');
  const now = lines[0]?.last.at ?? 0;
  const next = Array.from({ length: STEPS }, (_, index) => ({ at: instant(now + (3 + (index % 4)) * MILLISECONDS_PER_MINUTE), temperature: celsius(packed[2 * index + 1] ?? NaN) }));
  let turn = 0;
  return () => {
    turn = (turn + 1) % STEPS;
    const point = next[turn];
    let sum = 0;
    if (point !== undefined) for (const line of lines) sum += dueIfHeld(append(line, point)) ?? 0;
    return sum;
  };
}

/** What was earned before the new stretch: no milestone is full after it. */
const EARNED = 0.2;
type Hold = (temperature: number, shares: Float64Array) => Float64Array;

/** The solver with nothing but the new stretch, and then to where everything is full if the temperature stays. */
function theirStep({ forecast }: Contestant, hold: Hold): () => number {
  const stretches = stretchesOf(packedMinutes).slice(0, STEPS);
  let turn = 0;
  return () => {
    turn = (turn + 1) % STEPS;
    const stretch = stretches[turn] ?? packedMinutes;
    const { shares } = forecast(stretch);
    for (let milestone = 0; milestone < shares.length; milestone += 1) shares[milestone] = EARNED + (shares[milestone] ?? NaN);
    const rests = hold(stretch[3] ?? NaN, shares);
    let sum = 0;
    for (let milestone = 0; milestone < rests.length; milestone += 1) sum += (stretch[2] ?? NaN) + (rests[milestone] ?? NaN);
    return sum;
  };
}

/** Where the temperature stays, a division does it. */
function dividedOut(): Hold {
  const rests = new Float64Array(MILESTONES.length);
  return (temperature, shares) => {
    RATES(temperature, rests);
    for (let milestone = 0; milestone < rests.length; milestone += 1) rests[milestone] = (1 - (shares[milestone] ?? NaN)) / (rests[milestone] ?? NaN);
    return rests;
  };
}

/** Minutes between our due times and those of a solver. */
function duesApart({ forecast }: Contestant): number {
  const { dues } = forecast(packedMinutes);
  return Math.max(...progressLines(TABLES, packed).map((line, index) => Math.abs((line.due ?? NaN) / MILLISECONDS_PER_MINUTE - (dues[index] ?? NaN))));
}

const ourError = (points: PackedPoints): number => errorOf(progressLines(TABLES, points).map((line) => line.share), trueShares(points));

const LENGTHS = [100, 1000, 10_000];

const wholes = forecasters(POINTS);
const dividing = steppers(STEPS).map((one) => ({ ...one, step: theirStep(one, dividedOut()) }));
const steps = [...dividing, ...dividing.slice(0, 1).map((one) => ({ ...one, name: 'odex, also on to the due times', step: theirStep(one, odexHold(MILESTONES.length, RATES, one.tolerance)) }))];
const wholesCompared = comparedWith(ourForecast, wholes.map(theirForecast));
const stepsCompared = comparedWith(ourStep(POINTS), steps.map(({ step }) => step));
const ourSteps = ratesOf(LENGTHS.map(ourStep));
const sure = sureSide(packed);
const [whole, withOneMore] = ratesOf([sure.whole, sure.withOneMore]);
if (whole === undefined || withOneMore === undefined) throw new Error('The sure side has no figures.');

report({
  points: POINTS,
  milestones: MILESTONES.length,
  ourError: ourError(packed),
  wholes: wholes.flatMap(({ name, tolerance, error }, index) => withCompared({ name, tolerance, error }, wholesCompared[index])),
  steps: steps.flatMap(({ name, tolerance, error }, index) => withCompared({ name, tolerance, error }, stepsCompared[index])),
  ourSteps: ourSteps.flatMap((rate, index) => LENGTHS.slice(index, index + 1).map((after) => ({ after, rate }))),
  sure: { whole, withOneMore },
  dueMinutesApart: Math.max(...wholes.filter(({ name }) => name.includes('restarted')).map(duesApart)),
});

function withCompared(line: Omit<Line, 'compared'>, compared: Compared | undefined): Line[] {
  return compared === undefined ? [] : [{ ...line, compared }];
}
