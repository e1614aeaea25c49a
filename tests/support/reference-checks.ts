import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { ROOT } from './source-files.js';

/** Which ids a file `tests/reference/<group>.test.ts` runs. */
export const GROUPS = {
  'arrhenius-and-mkt': /^(?:arr|mkt|q10|ratio)-/,
  'cure-models': /^(?:KN|KS1|KS2)-/,
  'common-practice-law': /^(?:law|prog|ramp|init)-/,
  'dew-point': /^(?:dewA|dewM|dewP|margin|psat)-/,
  sealant: /^seal-/,
  'clock-zones': /^tz-/,
  signing: /^(?:slack|rfc4231)-/,
  'temperature-history': /^hist-/,
  'calendar-text': /^ical-/,
} as const;
export type Group = keyof typeof GROUPS;

const toleranceSchema = z.union([
  z.object({ abs: z.number() }).transform(({ abs }) => () => abs),
  z.object({ rel: z.number() }).transform(({ rel }) => (expected: number) => rel * Math.abs(expected)),
  z.string().transform(() => () => 0),
]);

const checkSchema = z.object({
  id: z.string(),
  quantity: z.string(),
  inputs: z.unknown(),
  expected: z.unknown(),
  /** How far a value may lie from the expected one. */
  tolerance: toleranceSchema,
  source: z.string().min(1),
  obtained: z.string().min(1),
});
export type ReferenceCheck = z.output<typeof checkSchema>;

export const CHECKS: readonly ReferenceCheck[] = z.array(checkSchema).parse(JSON.parse(readFileSync(join(ROOT, 'tests/reference/references.json'), 'utf8')));

export const idsOf = (group: Group): string[] => CHECKS.map((check) => check.id).filter((id) => GROUPS[group].test(id));

/** Fails where a value lies further from the expected one than the check allows. */
export type Near = (value: number, expected: number) => void;

/** Checks of one kind: what they are fed with, what they give, how it is found out. */
export interface Kind {
  readonly ids: RegExp;
  run(check: ReferenceCheck): void | Promise<void>;
}

export const kind = <I, E>(ids: RegExp, inputs: z.ZodType<I>, expected: z.ZodType<E>, run: (inputs: I, expected: E, near: Near, id: string) => void | Promise<void>): Kind => ({
  ids,
  run: (check) => run(inputs.parse(check.inputs), expected.parse(check.expected), nearBy(check), check.id),
});

function nearBy(check: ReferenceCheck): Near {
  return (value, expected) => {
    expect(Math.abs(value - expected), `${check.quantity}: ${value}, expected ${expected}`).toBeLessThanOrEqual(check.tolerance(expected));
  };
}

/** One test for every id of a group; an id without exactly one kind fails. */
export function everyCheck(group: Group, kinds: readonly Kind[]): void {
  describe(group, () => {
    it.each(CHECKS.filter((check) => GROUPS[group].test(check.id)).map((check) => [check.id, check] as const))('%s', async (id, check) => {
      const [found, ...more] = kinds.filter((one) => one.ids.test(id));
      if (found === undefined || more.length > 0) throw new Error(`${id} belongs to ${more.length + (found === undefined ? 0 : 1)} kinds of check`);
      expect.hasAssertions();
      await found.run(check);
    });
  });
}
