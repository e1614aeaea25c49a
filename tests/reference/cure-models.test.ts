import { z } from 'zod';
import { celsius, minutes } from '../../src/cure/units.js';
import { convertedBy, isothermalMinutes, MODEL_NAMES, MODELS, minutesUntil } from '../support/cure-model.js';
import { everyCheck, kind } from '../support/reference-checks.js';
import { creditedMinutes } from '../support/steady-stretches.js';

/**
 * Cure models that serve as oracles. KN: n-th order triplet of an epoxy with an aromatic amine (abstract, yhclgy.com article
 * 3507), used below its measured range. KS1: example constants of a public isoconversional package, synthetic. KS2: energies
 * of Riccardi, Adabbo, Williams, J. Appl. Polym. Sci. 29 (1984) 2481 (volume and page from memory), pre-factors of our own.
 * The additivity rule: Scheil, Arch. Eisenhuettenwes. 8 (1935) 565 (from memory); here it is our engine's own sum.
 */
const model = z.enum(MODEL_NAMES);
const stages = z.array(z.tuple([z.number(), z.number()])).transform((all) => all.map(([temperature, length]) => ({ temperature: celsius(temperature), minutes: minutes(length) })));
const jump = z.object({ model, alpha: z.number(), T1_C: z.number(), t1_min: z.number(), T2_C: z.number() });

everyCheck('cure-models', [
  kind(/-\d+C-\d+min$/, z.object({ model, T_C: z.number(), t_min: z.number() }), z.number(), (given, expected, near) => {
    near(convertedBy(MODELS[given.model], [{ temperature: celsius(given.T_C), minutes: minutes(given.t_min) }]), expected);
  }),
  kind(/-2stage$/, z.object({ model, segments: stages }), z.number(), (given, expected, near) => {
    near(convertedBy(MODELS[given.model], given.segments), expected);
  }),
  kind(/-add-/, jump, z.number(), (given, expected, near) => {
    near(minutesUntil(MODELS[given.model], given.alpha, jumped(given)) - given.t1_min, expected);
  }),
  kind(/-scheil-/, jump.extend({ t_iso_30: z.number(), t_iso_60: z.number() }), z.object({ additive_min: z.number(), error_pct: z.number() }), (given, expected, near) => {
    const oracle = MODELS[given.model];
    const rows = [given.T1_C, given.T2_C].map((temperature) => ({ temperature: celsius(temperature), minutes: isothermalMinutes(oracle, celsius(temperature), given.alpha) }));
    const exact = minutesUntil(oracle, given.alpha, jumped(given)) - given.t1_min;
    const ours = creditedMinutes(rows, jumped(given)) - given.t1_min;
    near(rows[0]?.minutes ?? NaN, given.t_iso_30);
    near(rows[1]?.minutes ?? NaN, given.t_iso_60);
    near(ours, expected.additive_min);
    near(100 * (ours / exact - 1), expected.error_pct);
  }),
]);

const jumped = (given: z.output<typeof jump>) => [
  { temperature: celsius(given.T1_C), minutes: minutes(given.t1_min) },
  { temperature: celsius(given.T2_C), minutes: minutes(Infinity) },
];
