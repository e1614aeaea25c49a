import { z } from 'zod';
import { MILESTONE_KINDS } from '../cure/card.js';
import { CAUTIONS, ENTERINGS } from '../repair/procedure.js';
import { ROLES } from '../repair/shop.js';
import { celsiusSchema, jointSchema, minutesSchema, stepSchema } from './brand-schema.js';

const need = z.discriminatedUnion('need', [
  z.strictObject({ need: z.literal('step'), step: stepSchema }),
  z.strictObject({ need: z.literal('confirmed'), joint: jointSchema, milestone: z.enum(MILESTONE_KINDS) }),
  z.strictObject({ need: z.literal('joint-below'), joint: jointSchema, temperature: celsiusSchema }),
  z.strictObject({ need: z.literal('dew-margin') }),
  z.strictObject({ need: z.literal('within'), step: stepSchema, minutes: minutesSchema }),
  z.strictObject({ need: z.literal('not-before'), step: stepSchema, minutes: minutesSchema }),
  z.strictObject({ need: z.literal('cures-done') }),
]);

const doneBy = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('word') }),
  z.strictObject({ by: z.literal('entry'), entry: z.enum(['pasted', 'closed', 'lamp-set']) }),
  z.strictObject({ by: z.literal('check'), milestone: z.enum(MILESTONE_KINDS) }),
]);

const step = z.strictObject({
  id: stepSchema,
  joint: jointSchema.nullable(),
  act: z.string(),
  role: z.enum(['apprentice', 'technician', 'foreman']),
  needs: z.array(need).readonly(),
  done: doneBy,
  enter: z.array(z.enum(ENTERINGS)).readonly(),
  /** Jobs that began before the field existed have no such limit. */
  openedDays: z.int().nullable().default(null),
  taps: z.array(z.string()).readonly(),
  cautions: z.array(z.enum(CAUTIONS)).readonly(),
  sign: z.array(z.enum(ROLES)).readonly().nullable(),
  starts: z.array(z.enum(['fire-watch', 'heat-ban'])).readonly(),
});

/** A procedure as it was frozen into a job. */
export const procedureSchema = z.strictObject({ name: z.string(), title: z.string(), version: z.string(), example: z.boolean(), steps: z.array(step).readonly() });
