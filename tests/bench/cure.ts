import { dueIfHeld, shareOf } from '../../src/cure/progress-lines.js';
import { rateGrid } from '../../src/cure/rate-grid.js';
import { rateTable } from '../../src/cure/rate-table.js';
import type { PackedPoints } from '../../src/cure/temperature-point.js';
import { MILLISECONDS_PER_MINUTE } from '../../src/cure/units.js';
import { errorOf, historyOf, inMinutes, MILESTONES, trueShares } from './history.js';
import { dividedOut, linesAlong, ourReadingError, ourReadings, READINGS, readingsAfter, theirReadings } from './readings.js';
import { report, type Line } from './report.js';
import { comparedWith, ratesOf, type Compared } from './rounds.js';
import { odexHold, rungeKuttaHold } from './solver-hold.js';
import { forecasters, RATES, steppers, type Contestant } from './solvers.js';
import { sureSide } from './sure-side.js';

const GRID = rateGrid(MILESTONES.map((rows) => rateTable(rows)));
const POINTS = 500;
const packed = historyOf(POINTS);
const packedMinutes = inMinutes(packed);

/** From packed points to due times. */
function ourForecast(): number {
  const lines = linesAlong(GRID, packed);
  return dueIfHeld(lines, 0) + dueIfHeld(lines, 1) + dueIfHeld(lines, 2);
}

const theirForecast = ({ forecast }: Contestant) => (): number => {
  const { shares, dues } = forecast(packedMinutes);
  let sum = 0;
  for (let milestone = 0; milestone < shares.length; milestone += 1) sum += (shares[milestone] ?? NaN) + (dues[milestone] || 0);
  return sum;
};

/** Minutes between our due times and those of a solver. */
function duesApart({ forecast }: Contestant): number {
  const { dues } = forecast(packedMinutes);
  const lines = linesAlong(GRID, packed);
  return Math.max(...MILESTONES.map((_, lane) => Math.abs(dueIfHeld(lines, lane) / MILLISECONDS_PER_MINUTE - (dues[lane] ?? NaN))));
}

function ourError(points: PackedPoints): number {
  const lines = linesAlong(GRID, points);
  return errorOf(MILESTONES.map((_, lane) => shareOf(lines, lane)), trueShares(points));
}

const LENGTHS = [100, 1000, 10_000];

const wholes = forecasters(POINTS);
const stepping = steppers(readingsAfter(POINTS));
const dividing = stepping.map((one) => ({ ...one, step: theirReadings(GRID, POINTS, one, dividedOut()) }));
/** The solver finds the due times itself; beside it, one whose user knows that a temperature that stays needs no solver. */
const walking = stepping.filter(({ name }) => name === 'odex, restarted' || name === 'ode45-cash-karp, restarted').map((one) => {
  const hold = one.name.startsWith('odex') ? odexHold : rungeKuttaHold;
  return { ...one, name: `${one.name.split(',')[0] ?? ''}, also to the due times`, step: theirReadings(GRID, POINTS, one, hold(MILESTONES.length, RATES, one.tolerance)) };
});
const steps = [...walking, ...dividing];
const wholesCompared = comparedWith(ourForecast, wholes.map(theirForecast));
const stepsCompared = comparedWith(ourReadings(GRID, POINTS), steps.map(({ step }) => step), READINGS);
const ourSteps = ratesOf(LENGTHS.map((length) => ourReadings(GRID, length)), READINGS);
const sure = sureSide(packed);
const [whole, withOneMore] = ratesOf([sure.whole, sure.withOneMore]);
if (whole === undefined || withOneMore === undefined) throw new Error('The sure side has no figures.');

const stepLines = steps.flatMap(({ name, tolerance, error }, index) => withCompared({ name, tolerance, error }, stepsCompared[index]));

report({
  points: POINTS,
  milestones: MILESTONES.length,
  ourError: ourError(packed),
  ourStepError: ourReadingError(GRID, POINTS),
  wholes: wholes.flatMap(({ name, tolerance, error }, index) => withCompared({ name, tolerance, error }, wholesCompared[index])),
  steps: stepLines.slice(0, walking.length),
  stepsDivided: stepLines.slice(walking.length),
  ourSteps: ourSteps.flatMap((rate, index) => LENGTHS.slice(index, index + 1).map((after) => ({ after, rate }))),
  sure: { whole, withOneMore },
  dueMinutesApart: Math.max(...wholes.filter(({ name }) => !name.includes('one run')).map(duesApart)),
});

function withCompared(line: Omit<Line, 'compared'>, compared: Compared | undefined): Line[] {
  return compared === undefined ? [] : [{ ...line, compared }];
}
