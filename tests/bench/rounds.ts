const TURNS = 25;
const ROUND_MS = 25;
const WARM_UP_MS = 400;

/** Median and middle half. */
export interface Spread {
  readonly median: number;
  readonly low: number;
  readonly high: number;
}

export interface Compared {
  /** Runs per second of processor time: the machine may be shared. */
  readonly ours: Spread;
  readonly theirs: Spread;
  /** Of neighbouring rounds. */
  readonly ratio: Spread;
}

/**
 * Ours against each of the others in short rounds by turns: ours, one of them, ours, the next of them … What makes the machine slow for
 * a while hits both of a pair, so that each pair's ratio stands, and the median of the ratios leaves out pairs that were torn apart.
 * `each`: what a run does so many times counts so often.
 */
export function comparedWith(ours: () => number, others: readonly (() => number)[], each = 1): Compared[] {
  for (const work of [ours, ...others]) round(work, WARM_UP_MS);
  const found = others.map(() => ({ ours: new Array<number>(), theirs: new Array<number>() }));
  for (let turn = 0; turn < TURNS; turn += 1) {
    for (const [index, theirs] of others.entries()) {
      found[index]?.ours.push(each * round(ours, ROUND_MS));
      found[index]?.theirs.push(each * round(theirs, ROUND_MS));
    }
  }
  return found.map((rates) => ({ ours: spreadOf(rates.ours), theirs: spreadOf(rates.theirs), ratio: spreadOf(rates.ours.map((rate, turn) => rate / (rates.theirs[turn] ?? NaN))) }));
}

/** Works by themselves, in turns. */
export function ratesOf(works: readonly (() => number)[], each = 1): Spread[] {
  for (const work of works) round(work, WARM_UP_MS);
  const found = works.map(() => new Array<number>());
  for (let turn = 0; turn < TURNS; turn += 1) for (const [index, work] of works.entries()) found[index]?.push(each * round(work, ROUND_MS));
  return found.map(spreadOf);
}

export function spreadOf(values: readonly number[]): Spread {
  const sorted = [...values].sort((one, other) => one - other);
  const at = (part: number): number => sorted[Math.round(part * (sorted.length - 1))] ?? NaN;
  return { median: at(0.5), low: at(0.25), high: at(0.75) };
}

function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** What the work returns is summed up, so that no compiler finds it unused. */
let sum = 0;

function round(work: () => number, length: number): number {
  const begin = processorMs();
  let runs = 0;
  let took = 0;
  for (let batch = 1; took < length; batch = Math.min(batch * 2, 4096)) {
    for (let run = 0; run < batch; run += 1) sum += work();
    runs += batch;
    took = processorMs() - begin;
  }
  if (Number.isNaN(sum)) throw new Error('A benchmark computed nothing.');
  return (runs * 1000) / took;
}
