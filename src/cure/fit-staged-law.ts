import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { GAS_CONSTANT } from './arrhenius.js';
import { inverseOf, stagedShare, type KineticLaw, type Stage } from './kinetics.js';
import { celsius, minutes } from './units.js';

/** One way in which a sheet says that the milestone is reached: these stages, one after the other. */
export interface StagedPoint {
  readonly stages: readonly Stage[];
}

/** Where the line is anchored while it is fitted; any temperature of a shop does. */
const ANCHOR = celsius(25);
/** Parameters of the search are ln(minutes at the anchor) and energy/R in this many kelvin: both of the order of 1. */
const KELVIN_PER_UNIT = 10_000;
const FIRST_GUESS = [Math.log(600), 0.7];
/** Sum of squares of ln(time): points that one line can meet are met to a millionth of a millionth. */
const NO_ERROR = 1e-24;
/** Below this the points lie at one temperature (10⁴/K; 0.1 °C is 0.01): a line through them may have any slope. */
const SAME_TEMPERATURE = 1e-3;

/**
 * The Arrhenius line that comes nearest to published points, by least squares in ln(time); then slowed down until no
 * point is undercut (`stagedShare` of every point is at most 1). Null where the points give no line: fewer than two
 * temperatures, or hotter would not be faster.
 */
export function fitStagedLaw(points: readonly StagedPoint[]): KineticLaw | null {
  if (points.length < 2 || points.some((point) => point.stages.length === 0 || point.stages.some((stage) => stage.minutes <= 0))) return null;
  const numbers = points.map((_, index) => index);
  const { parameterValues } = levenbergMarquardt({ x: numbers, y: points.map(() => 0) }, (line) => (index) => missing(points[index], line).lnTime, {
    initialValues: FIRST_GUESS,
    jacobianFunction: (line) => (index) => [1, missing(points[index], line).slope],
    errorTolerance: NO_ERROR,
  });
  const [, energyOverR = 0] = parameterValues;
  const slopes = points.map((point) => missing(point, parameterValues).slope);
  if (Math.max(...slopes) - Math.min(...slopes) < SAME_TEMPERATURE || energyOverR <= 0) return null;
  return slowedDown(lawOf(parameterValues), points);
}

/**
 * How many times longer than the point's stages the line takes, as a logarithm, and how that grows with the energy.
 * A sum of exponentials: the greatest is taken out first, so that a bad guess does not overflow.
 */
function missing(point: StagedPoint | undefined, [lnMinutes = 0, energyOverR = 0]: readonly number[]): { lnTime: number; slope: number } {
  const terms = (point?.stages ?? []).map((stage) => {
    const colder = KELVIN_PER_UNIT * (inverseOf(stage.temperature) - inverseOf(ANCHOR));
    return { colder, lnShare: Math.log(stage.minutes) - lnMinutes - energyOverR * colder };
  });
  const greatest = Math.max(...terms.map((term) => term.lnShare));
  const sum = terms.reduce((total, term) => total + Math.exp(term.lnShare - greatest), 0);
  const slope = terms.reduce((total, term) => total + (term.colder * Math.exp(term.lnShare - greatest)) / sum, 0);
  return { lnTime: -(greatest + Math.log(sum)), slope };
}

const lawOf = ([lnMinutes = 0, energyOverR = 0]: readonly number[]): KineticLaw => ({
  temperature: ANCHOR,
  minutes: minutes(Math.exp(lnMinutes)),
  energy: energyOverR * KELVIN_PER_UNIT * GAS_CONSTANT,
});

function slowedDown(law: KineticLaw, points: readonly StagedPoint[]): KineticLaw {
  const most = Math.max(1, ...points.map((point) => stagedShare(law, point.stages)));
  return { ...law, minutes: minutes(law.minutes * most) };
}
