const FIRST_MS = 1_000;
const LONGEST_MS = 60_000;
/** 2^6 seconds is past the cap; higher powers would only lose precision. */
const LAST_DOUBLING = 6;

/** Pause before try number `attempt` + 1, in milliseconds: 1 s, 2 s, 4 s … at most 60 s. `attempt` counts from 1. */
export function backoffMs(attempt: number): number {
  const doublings = Math.min(Math.max(attempt - 1, 0), LAST_DOUBLING);
  return Math.min(FIRST_MS * 2 ** doublings, LONGEST_MS);
}
