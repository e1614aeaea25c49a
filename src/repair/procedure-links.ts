import type { StepId } from './ids.js';

/** Which steps each step waits for. */
export type Links = ReadonlyMap<StepId, readonly StepId[]>;

/** Every step that has to be done before `from`, however far back; `from` itself only where it goes in a circle. */
export function reachedFrom(links: Links, from: StepId): ReadonlySet<StepId> {
  const reached = new Set<StepId>();
  const open = [...(links.get(from) ?? [])];
  for (let step = open.pop(); step !== undefined; step = open.pop()) {
    if (reached.has(step)) continue;
    reached.add(step);
    open.push(...(links.get(step) ?? []));
  }
  return reached;
}

/** The circles in which steps wait for each other, each told once, from its first step round to the last before it. */
export function waysRound(links: Links): readonly (readonly StepId[])[] {
  const told = new Set<StepId>();
  return [...links.keys()].flatMap((start) => {
    if (told.has(start) || !reachedFrom(links, start).has(start)) return [];
    const way = wayBack(links, start);
    for (const step of way) told.add(step);
    return [way];
  });
}

/** The shortest way from a step of a circle back to itself. */
function wayBack(links: Links, start: StepId): readonly StepId[] {
  let ways: readonly (readonly StepId[])[] = [[start]];
  const seen = new Set<StepId>();
  while (ways.length > 0) {
    const round = ways.find((way) => links.get(way.at(-1) ?? start)?.includes(start));
    if (round !== undefined) return round;
    ways = ways.flatMap((way) => (links.get(way.at(-1) ?? start) ?? []).filter((step) => !seen.has(step) && Boolean(seen.add(step))).map((step) => [...way, step]));
  }
  return [start];
}
