import type { Desk } from '../../clerk/desk.js';

/** Number of the newest post, 0 when there is none. Posts are numbered upwards, so halving finds it without reading them all. */
export function lastSeq(desk: Pick<Desk, 'postsAfter'>): number {
  let known = 0;
  let beyond = 1;
  for (let next = nextAfter(desk, beyond); next !== null; next = nextAfter(desk, beyond)) {
    known = next;
    beyond = next * 2;
  }
  // Invariant: nothing stands after `beyond`; `known` is a post, or 0.
  while (known < beyond) {
    const middle = Math.floor((known + beyond) / 2);
    const next = nextAfter(desk, middle);
    if (next === null) beyond = middle;
    else known = next;
  }
  return known;
}

const nextAfter = (desk: Pick<Desk, 'postsAfter'>, seq: number): number | null => desk.postsAfter(seq, 1)[0]?.seq ?? null;
