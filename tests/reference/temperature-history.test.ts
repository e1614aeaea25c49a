import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { z } from 'zod';
import { GAS_CONSTANT } from '../../src/cure/arrhenius.js';
import { kineticMinutes, meanKineticTemperature, stagedShare } from '../../src/cure/kinetics.js';
import { shareAt } from '../../src/cure/progress.js';
import { celsius, minutes, plus, type Celsius } from '../../src/cure/units.js';
import { practiceLaw, rampShare } from '../support/staged-practice.js';
import { whereIs } from '../support/quadrature.js';
import { everyCheck, kind } from '../support/reference-checks.js';
import { ROOT } from '../support/source-files.js';
import { credited, lasting, STARTED } from '../support/steady-stretches.js';

/**
 * tests/data/hourly-normals.csv: three windows of data/seattle-weather-hourly-normals.csv of vega-datasets 3.2.1 (NOAA NCDC
 * 1981-2010 hourly climate normals, US Government work). The line that turns temperatures into shares: common practice, no source.
 */
const LINES = readFileSync(join(ROOT, 'tests/data/hourly-normals.csv'), 'utf8').trim().split('\n').slice(1).map((line) => line.split(','));
const HOUR = minutes(60);
/** The mean is printed with four to five decimals. */
const MEAN_PRINTED_TO = 5e-5;

/** One temperature per hour, and the one at the end of the last hour. */
function hourly(start: string, hours: number): Celsius[] {
  const first = LINES.findIndex(([date]) => date === start);
  const window = LINES.slice(first, first + hours + 1).map(([, temperature]) => celsius(Number(temperature)));
  if (first < 0 || window.length !== hours + 1 || window.some(Number.isNaN)) throw new Error(`no ${hours} hours from ${start}`);
  return window;
}

const stretchesOf = (temperatures: readonly Celsius[]) => temperatures.map((temperature) => ({ temperature, minutes: HOUR }));

/** The first minute at which ramps from hour to hour have earned everything. */
function readyAfter(ramps: readonly number[], shareWithin: (hour: number, minute: number) => number): number {
  let share = 0;
  for (const [hour, ramp] of ramps.entries()) {
    if (share + ramp >= 1) return 60 * hour + whereIs(1 - share, (minute) => shareWithin(hour, minute), 0, HOUR);
    share += ramp;
  }
  return NaN;
}

const window = z.object({ start: z.string(), hours: z.number(), T_amb_C: z.number().transform(celsius), offset_K: z.literal(0) });
const shares = z.object({ hold_previous: z.number(), trapezoid_of_rate: z.number(), linear_T: z.number(), mean_T: z.number(), law_MKT_hold: z.number(), ready_after_min_linear_T: z.number().optional() });

everyCheck('temperature-history', [
  kind(/^hist-/, window, shares, ({ start, hours, T_amb_C }, expected, near) => {
    const law = practiceLaw(T_amb_C);
    const temperatures = hourly(start, hours);
    const held = stretchesOf(temperatures.slice(0, -1));
    near(stagedShare(law, held), expected.hold_previous);
    near((stagedShare(law, held) + stagedShare(law, stretchesOf(temperatures.slice(1)))) / 2, expected.trapezoid_of_rate);
    expect(Math.abs(held.reduce((sum, one) => sum + one.temperature, 0) / hours - expected.mean_T)).toBeLessThanOrEqual(MEAN_PRINTED_TO);
    near(meanKineticTemperature(held, law.energy / GAS_CONSTANT) ?? NaN, expected.law_MKT_hold);

    const rows = [...new Set(temperatures)].map((temperature) => ({ temperature, minutes: kineticMinutes(law, temperature) }));
    near(shareAt(credited(rows, held), plus(STARTED, lasting(held))), Math.min(1, expected.hold_previous));

    const end = (hour: number): Celsius => temperatures[hour + 1] ?? celsius(NaN);
    const ramps = temperatures.slice(0, -1).map((temperature, hour) => rampShare(law, temperature, end(hour), HOUR));
    near(ramps.reduce((sum, ramp) => sum + ramp, 0), expected.linear_T);
    const within = (hour: number, minute: number): number => {
      const begin = temperatures[hour] ?? celsius(NaN);
      return rampShare(law, begin, celsius(begin + ((end(hour) - begin) * minute) / HOUR), minute);
    };
    const ready = readyAfter(ramps, within);
    if (expected.ready_after_min_linear_T === undefined) expect(ready).toBeNaN();
    else near(ready, expected.ready_after_min_linear_T);
  }),
]);
