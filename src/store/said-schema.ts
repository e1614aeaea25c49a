import { z } from 'zod';
import type { About, DeliveryTarget } from '../clerk/message.js';
import { REMINDER_KINDS } from '../repair/reminder.js';
import type { Answer } from '../reply/answer.js';
import { jobSchema, jointSchema } from './brand-schema.js';
import { readJson } from './read-json.js';

const span = z.strictObject({ kind: z.enum(['text', 'strong']), text: z.string() });

const answer = z.strictObject({
  tone: z.enum(['plain', 'question', 'alarm', 'refusal']),
  lines: z.array(z.array(span).readonly()).readonly(),
  buttons: z.array(z.strictObject({ label: z.string(), line: z.string(), asks: z.literal('reason').optional() })).readonly(),
});

const about = z.strictObject({
  job: jobSchema.nullable(),
  joint: jointSchema.nullable(),
  card: z.string().nullable(),
  kind: z.enum([...REMINDER_KINDS, 'bundle', 'stranger']),
});

const target = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('job-thread'), job: jobSchema }),
  z.strictObject({ kind: z.literal('home-channel') }),
  z.strictObject({ kind: z.literal('channel'), channel: z.string(), thread: z.string().nullable() }),
  z.strictObject({ kind: z.literal('only-for'), channel: z.string(), thread: z.string().nullable(), user: z.string() }),
  z.strictObject({ kind: z.literal('direct'), user: z.string() }),
  z.strictObject({ kind: z.literal('edit'), of: z.string() }),
  z.strictObject({ kind: z.literal('thread-head'), job: jobSchema }),
]);

export const readAnswer = (text: string, where: string): Answer => readJson(answer, text, where);
export const readAbout = (text: string, where: string): About => readJson(about, text, where);
export const readTarget = (text: string, where: string): DeliveryTarget => readJson(target, text, where);
