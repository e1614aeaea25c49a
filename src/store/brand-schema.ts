import { z } from 'zod';
import { celsius, instant, minutes } from '../cure/units.js';
import { entryNo, jobNo, jointNo, lampName, personId, stepId } from '../repair/ids.js';

/** Plain numbers and texts of a stored column, back to units and names. */
export const celsiusSchema = z.number().transform(celsius);
export const minutesSchema = z.number().transform(minutes);
export const instantSchema = z.number().transform(instant);
export const entrySchema = z.int().transform(entryNo);
export const jobSchema = z.string().transform(jobNo);
export const jointSchema = z.string().transform(jointNo);
export const stepSchema = z.string().transform(stepId);
export const lampSchema = z.string().transform(lampName);
export const personSchema = z.string().transform(personId);
/** A person or the whole channel. */
export const addresseeSchema = z.union([z.literal('channel'), personSchema]);
