const ROUNDS = 7;
const ROUND_MS = 120;

/** Runs per second of processor time (the machine may be shared) of each piece of work, the median of some rounds; the rounds take turns, so that noise hits all alike. */
export function ratesOf(works: readonly (() => number)[]): number[] {
  const found = works.map((): number[] => []);
  for (const work of works) round(work);
  for (let turn = 0; turn < ROUNDS; turn += 1) for (const [index, work] of works.entries()) found[index]?.push(round(work));
  return found.map((rates) => rates.sort((one, other) => one - other)[Math.floor(ROUNDS / 2)] ?? NaN);
}

function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** What the work returns is summed up, so that no compiler finds it unused. */
let sum = 0;

function round(work: () => number): number {
  const begin = processorMs();
  let runs = 0;
  let took = 0;
  for (let batch = 1; took < ROUND_MS; batch = Math.min(batch * 2, 4096)) {
    for (let run = 0; run < batch; run += 1) sum += work();
    runs += batch;
    took = processorMs() - begin;
  }
  if (Number.isNaN(sum)) throw new Error('A benchmark computed nothing.');
  return (runs * 1000) / took;
}
