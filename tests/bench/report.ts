import type { Compared, Spread } from './rounds.js';

export interface Line {
  readonly name: string;
  readonly tolerance: number;
  readonly error: number;
  readonly compared: Compared;
}

export interface Result {
  readonly points: number;
  readonly milestones: number;
  /** Largest relative error of a share. */
  readonly ourError: number;
  /** Largest relative error of what one reading adds. */
  readonly ourStepError: number;
  readonly wholes: readonly Line[];
  /** Solvers that find the due times themselves. */
  readonly steps: readonly Line[];
  /** Solvers whose user divides what is left by the rate, as we do. */
  readonly stepsDivided: readonly Line[];
  /** One new reading after so many. */
  readonly ourSteps: readonly { readonly after: number; readonly rate: Spread }[];
  readonly sure: { readonly whole: Spread; readonly withOneMore: Spread };
  readonly dueMinutesApart: number;
}

const WHOLE_GOAL = 100;
const STEP_GOAL = 200;
const LARGEST_SPREAD = 0.25;

/** For people, then the same as JSON. */
export function report(result: Result): void {
  const { points, milestones, ourError, ourStepError, wholes, steps, stepsDivided, ourSteps, sure, dueMinutesApart } = result;
  const rates = ourSteps.map(({ rate }) => rate.median);
  const spread = Math.max(...rates) / Math.min(...rates) - 1;
  const lines = [
    `${points} points, ${milestones} milestones, unpacking included; runs per processor second: median (middle half of the rounds)`,
    row('cureclerk', middle(wholes.map(({ compared }) => compared.ours)), `error ${ourError.toExponential(1)}`),
    ...wholes.map(lineOf),
    `  ${goal('fastest solver', fastest(wholes), WHOLE_GOAL)}; due times at most ${dueMinutesApart.toExponential(1)} min apart`,
    '',
    `one new reading, ${milestones} milestones, due times if the joint stays as it is`,
    ...ourSteps.map(({ after, rate }) => row(`cureclerk after ${after.toLocaleString('en')} points`, rate, `error ${ourStepError.toExponential(1)}`)),
    ...steps.map(lineOf),
    `  ${goal('fastest solver', fastest(steps), STEP_GOAL)}`,
    'the same, with the due times divided out for the solver',
    ...stepsDivided.map(lineOf),
    `  spread over the lengths ${(100 * spread).toFixed(0)} % (goal 25: ${reached(spread <= LARGEST_SPREAD)})`,
    '',
    `the sure side, ${points} readings, ${milestones} milestones`,
    row('forecast(card, history)', sure.whole, ''),
    row('one new reading, computed anew', sure.withOneMore, ''),
    '',
    JSON.stringify({ ...result, lengthSpread: spread }),
  ];
  process.stdout.write(`\n${lines.join('\n')}\n`);
}

const lineOf = ({ name, compared, tolerance, error }: Line): string =>
  row(name, compared.theirs, `error ${error.toExponential(1)} (tolerance ${tolerance.toExponential(1)}), ratio ${ratioOf(compared.ratio)}`);

const row = (name: string, rate: Spread, rest: string): string => `  ${name.padEnd(38)}${figure(rate.median).padStart(11)}  ${`(${figure(rate.low)}–${figure(rate.high)})`.padEnd(24)}${rest}`.trimEnd();

const goal = (name: string, line: Line | undefined, wanted: number): string =>
  line === undefined ? 'no solver is as exact as asked' : `ratio to the ${name} (${line.name}): ${ratioOf(line.compared.ratio)}, goal ${wanted}: ${reached(line.compared.ratio.median >= wanted)}`;

const fastest = (lines: readonly Line[]): Line | undefined => [...lines].sort((one, other) => one.compared.ratio.median - other.compared.ratio.median)[0];
const middle = (spreads: readonly Spread[]): Spread => [...spreads].sort((one, other) => one.median - other.median)[spreads.length >> 1] ?? { median: NaN, low: NaN, high: NaN };
const ratioOf = ({ median, low, high }: Spread): string => `${median.toFixed(0)} (${low.toFixed(0)}–${high.toFixed(0)})`;
const figure = (rate: number): string => Math.round(rate).toLocaleString('en');
const reached = (is: boolean): string => (is ? 'reached' : 'NOT reached');
