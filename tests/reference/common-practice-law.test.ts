import { z } from 'zod';
import { kineticMinutes, stagedShare } from '../../src/cure/kinetics.js';
import { shareAt } from '../../src/cure/progress.js';
import { celsius, minutes, plus, type Celsius } from '../../src/cure/units.js';
import { practiceLaw, rampShare } from '../support/staged-practice.js';
import { everyCheck, kind } from '../support/reference-checks.js';
import { credited, creditedMinutes, lasting, STARTED, type SteadyStretch } from '../support/steady-stretches.js';

/** Common practice, no source: 48 h without heat; 60 min at 30 °C, then 90 min at 60 °C. The figures follow from one Arrhenius line through both. */
const degrees = z.number().transform(celsius);
const ambient = { T_amb_C: degrees };
const segments = z
  .object({ 'segments_[C,min]': z.array(z.tuple([degrees, z.number().transform(minutes)])) })
  .transform((given) => given['segments_[C,min]'].map(([temperature, length]) => ({ temperature, minutes: length })));
const LAW = practiceLaw(celsius(23));

/** A card with the line's own minutes at every temperature that comes up, so that our engine looks up and sums. */
const rowsFor = (stretches: readonly SteadyStretch[]) => [...new Set(stretches.map((stretch) => stretch.temperature))].map((temperature) => ({ temperature, minutes: kineticMinutes(LAW, temperature) }));

/** Minutes still needed at `rest` after these stretches, by our engine. */
function restAt(stretches: readonly SteadyStretch[], rest: Celsius): number {
  const all = [...stretches, { temperature: rest, minutes: minutes(Infinity) }];
  return creditedMinutes(rowsFor(all), all) - lasting(stretches);
}

everyCheck('common-practice-law', [
  kind(/^law-Ea-/, z.object(ambient), z.number(), (given, expected, near) => {
    near(practiceLaw(given.T_amb_C).energy, expected);
  }),
  kind(/^law-t(?:30|60)-/, z.object(ambient), z.number(), (given, expected, near, id) => {
    near(kineticMinutes(practiceLaw(given.T_amb_C), celsius(id.startsWith('law-t30') ? 30 : 60)), expected);
  }),
  kind(/^law-t-/, z.object({ ...ambient, T_C: degrees }), z.number(), (given, expected, near) => {
    near(kineticMinutes(practiceLaw(given.T_amb_C), given.T_C), expected);
  }),
  kind(/^prog-[a-z-]+(?<!-rest)$/, segments, z.number(), (stretches, expected, near) => {
    near(stagedShare(LAW, stretches), expected);
    near(shareAt(credited(rowsFor(stretches), stretches), plus(STARTED, lasting(stretches))), expected);
  }),
  kind(/^prog-.*-rest60$/, segments, z.number(), (stretches, expected, near) => {
    near(restAt(stretches, celsius(60)), expected);
  }),
  kind(/^prog-.*-rest23$/, segments, z.number(), (stretches, expected, near) => {
    near(restAt(stretches, celsius(23)), expected);
  }),
  kind(/^ramp-/, z.object({ T1_C: degrees, T2_C: degrees, minutes: z.number() }), z.number(), (given, expected, near) => {
    near(rampShare(LAW, given.T1_C, given.T2_C, given.minutes), expected);
  }),
  // Assumption of the check: initial strength, 60 min at 30 °C, follows a line as steep as final strength.
  kind(/^init-t-/, z.object({ T_C: degrees }), z.number(), (given, expected, near) => {
    near(kineticMinutes({ ...LAW, temperature: celsius(30), minutes: minutes(60) }, given.T_C), expected);
  }),
]);
