import type { Context } from 'hono';
import { z } from 'zod';
import { Problem } from './problem.js';

const LONGEST_TEXT = 300;
const FROM_RULE = 'from must be 1 to 40 letters, digits, spaces, dots, underscores or hyphens';

const from = z
  .string({ error: FROM_RULE })
  .trim()
  .normalize()
  .regex(/^[\p{L}\p{M}\p{N} ._-]{1,40}$/u, { error: FROM_RULE });

/** Whoever writes at the page, for whose eyes it is printed. */
export const ReaderQuery = z.object({ from: from.optional() });

const line = (field: string): z.ZodType<string> => {
  const rule = { error: `${field} must be 1 to ${LONGEST_TEXT} characters` };
  return z.string(rule).trim().min(1, rule).max(LONGEST_TEXT, rule);
};

const REPLY_RULE = { error: 'reply must be the id of the reply whose button was pressed' };

export const MessageBody = z.strictObject({ from, text: line('text') });
export const PressBody = z.strictObject({ from, reply: z.string(REPLY_RULE).trim().min(1, REPLY_RULE).max(LONGEST_TEXT, REPLY_RULE), button: line('button') });
const ADVANCE_RULE = 'advance must be an ISO 8601 duration such as PT45M';

/** A length of time; or `to: next`, the next planned moment, at the latest `until`. */
export const ClockBody = z
  .strictObject({ advance: z.string({ error: ADVANCE_RULE }).optional(), to: z.literal('next', { error: 'to must be next' }).optional(), until: z.iso.datetime({ error: 'until must be an ISO 8601 instant in UTC' }).optional() })
  .refine(({ advance, to }) => (advance === undefined) !== (to === undefined), { path: ['advance'], error: ADVANCE_RULE });

/** Reads a JSON body once. Throws a Problem that names the field. */
export async function readBody<T>(c: Context, schema: z.ZodType<T>): Promise<T> {
  const kind = c.req.header('content-type') ?? '';
  if (!/^application\/json\s*(;|$)/i.test(kind.trim())) throw new Problem(415, 'Send the body as application/json.', 'Content-Type');
  const result = schema.safeParse(parseJson(await c.req.text()));
  if (result.success) return result.data;
  throw bodyProblem(result.error.issues);
}

/** Reads what stands after the question mark in the address. Throws a Problem that names the field. */
export function readQuery<T>(c: Context, schema: z.ZodType<T>): T {
  const result = schema.safeParse(c.req.query());
  if (result.success) return result.data;
  throw bodyProblem(result.error.issues);
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new Problem(400, `The body is not JSON: ${error instanceof Error ? error.message : String(error)}`, 'body');
  }
}

/** An unknown field is named first: it is most likely the misspelt one that is missing as well. */
function bodyProblem(issues: readonly z.core.$ZodIssue[]): Problem {
  const unknown = issues.flatMap((issue) => (issue.code === 'unrecognized_keys' ? issue.keys : []));
  const rules = issues.filter((issue) => issue.code !== 'unrecognized_keys').map((issue) => (issue.path.length === 0 ? 'the body must be a JSON object' : issue.message));
  const named = unknown.length === 0 ? [] : [`unknown ${unknown.length === 1 ? 'field' : 'fields'} ${unknown.join(', ')}`];
  const field = unknown[0] ?? issues[0]?.path[0]?.toString() ?? 'body';
  return new Problem(400, `${[...named, ...rules].join('; ')}.`, field);
}
