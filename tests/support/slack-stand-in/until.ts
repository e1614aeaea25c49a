import { setTimeout as wait } from 'node:timers/promises';

const STEP_MS = 10;

/** Waits until `look` gives something other than null, undefined or false; fails with `what` after `withinMs`. */
export async function until<T>(what: string, look: () => T | null | undefined | false, withinMs = 10_000): Promise<T> {
  const deadline = Date.now() + withinMs;
  for (;;) {
    const seen = look();
    if (seen !== null && seen !== undefined && seen !== false) return seen;
    if (Date.now() > deadline) throw new Error(`waited ${withinMs} ms for: ${what}`);
    await wait(STEP_MS);
  }
}
