import { z } from 'zod';

/**
 * An object that takes no other keys than those of `shape`. Unlike a strict object, every stranger gets an issue of its
 * own at its own place, and the issue carries the keys that would have been known (`params.known`).
 */
export function closedObject<Shape extends z.ZodRawShape>(shape: Shape) {
  const stranger = z.custom<unknown>(() => false, { error: 'is not known here', params: { known: Object.keys(shape) } });
  return z.object(shape, { error: expects('keys with values, one on a line') }).catchall(stranger);
}

/** The words for a value that is absent or of the wrong kind. */
export const expects =
  (expectation: string) =>
  (issue: { readonly input?: unknown }): string =>
    issue.input === undefined ? `is missing: ${expectation}` : `must be ${expectation}`;
