import { z } from 'zod';
import { CARD_BASES, MILESTONE_KINDS } from '../cure/card.js';
import { minutes } from '../cure/units.js';
import { celsiusSchema, minutesSchema } from './brand-schema.js';

const sheetRow = z.strictObject({ temperature: celsiusSchema, minutes: minutesSchema });
const recipeStage = z.strictObject({ lamp: celsiusSchema, minutes: minutesSchema, reaches: z.enum(MILESTONE_KINDS).nullable() });
const tableRow = z.strictObject({ atLeast: celsiusSchema, humidity: z.number(), minutes: minutesSchema });

const rateLaw = z.discriminatedUnion('law', [
  z.strictObject({ law: z.literal('credit'), rows: z.array(sheetRow).readonly() }),
  z.strictObject({ law: z.literal('recipe'), stages: z.array(recipeStage).readonly() }),
  z.strictObject({ law: z.literal('table'), rows: z.array(tableRow).readonly() }),
  z.strictObject({
    law: z.literal('depth-root'),
    depthMillimetres: z.number(),
    minutes: minutesSchema,
    reference: z.strictObject({ temperature: celsiusSchema, humidity: z.number() }),
  }),
  z.strictObject({ law: z.literal('above'), temperature: celsiusSchema, minutes: minutesSchema }),
  z.strictObject({ law: z.literal('dwell'), temperature: celsiusSchema, minutes: minutesSchema, after: minutesSchema.default(minutes(0)) }),
  z.strictObject({ law: z.literal('elapsed'), minutes: minutesSchema }),
]);

const openTime = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('rows'), rows: z.array(sheetRow).readonly() }),
  z.strictObject({ by: z.literal('minutes'), minutes: minutesSchema }),
]);

/** A material card as it was frozen into a cure. */
export const cardSchema = z.strictObject({
  name: z.string(),
  title: z.string(),
  version: z.string(),
  example: z.boolean(),
  basis: z.enum(CARD_BASES),
  milestones: z.array(z.strictObject({ kind: z.enum(MILESTONE_KINDS), laws: z.array(rateLaw).readonly() })).readonly(),
  openTime: openTime.nullable(),
  maxPanel: celsiusSchema.nullable(),
  maxLamp: celsiusSchema.nullable(),
  recoatBy: minutesSchema.nullable(),
  marginPercent: z.number().default(0),
  noHeatAfter: z.boolean().default(false),
  openedDays: z.int().nullable().default(null),
});
