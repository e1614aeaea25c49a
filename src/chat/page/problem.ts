import type { Context } from 'hono';

const TITLES = {
  400: 'Bad Request',
  403: 'Forbidden',
  404: 'Not Found',
  405: 'Method Not Allowed',
  409: 'Conflict',
  413: 'Content Too Large',
  415: 'Unsupported Media Type',
  500: 'Internal Server Error',
} as const;

export type ProblemStatus = keyof typeof TITLES;

/** A request that cannot be answered. `field` names what is wrong in it; `detail` says what to do. */
export class Problem extends Error {
  override readonly name = 'Problem';

  constructor(
    readonly status: ProblemStatus,
    detail: string,
    readonly field: string | null = null,
  ) {
    super(detail);
  }
}

/** RFC 9457. The type is `about:blank`: status and field already tell a program all there is. */
export function problemResponse(c: Context, problem: Problem): Response {
  const field = problem.field === null ? {} : { field: problem.field };
  const body = { type: 'about:blank', title: TITLES[problem.status], status: problem.status, detail: problem.message, ...field };
  return c.body(JSON.stringify(body), problem.status, { 'content-type': 'application/problem+json' });
}
