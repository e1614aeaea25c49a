/** Places of a list, from `first` to `last`. */
export interface Span {
  readonly first: number;
  readonly last: number;
}

export interface ValueSpan extends Span {
  readonly value: number;
}

/**
 * For each place the lowest value of the spans over it, Infinity where there is none; spans in order of `last`.
 * From the last place to the first, a span is entered where it ends; a binary indexed tree over where spans begin answers
 * for the place in log n steps, however the spans cross.
 */
export function lowestOver(count: number, spans: readonly ValueSpan[]): Float64Array {
  const lowest = new Float64Array(count);
  const tree = new Float64Array(count).fill(Infinity);
  let next = spans.length - 1;
  for (let place = count - 1; place >= 0; place -= 1) {
    for (let span = spans[next]; span !== undefined && span.last >= place; span = spans[next]) {
      enter(tree, span);
      next -= 1;
    }
    lowest[place] = lowestUpTo(tree, place);
  }
  return lowest;
}

function enter(tree: Float64Array, { first, value }: ValueSpan): void {
  for (let node = first; node < tree.length; node |= node + 1) tree[node] = Math.min(tree[node] ?? Infinity, value);
}

function lowestUpTo(tree: Float64Array, place: number): number {
  let lowest = Infinity;
  for (let node = place; node >= 0; node = (node & (node + 1)) - 1) lowest = Math.min(lowest, tree[node] ?? Infinity);
  return lowest;
}

/** For each place how many spans lie over it. */
export function countOver(count: number, spans: readonly Span[]): Int32Array {
  const over = new Int32Array(count + 1);
  for (const { first, last } of spans) {
    over[first] = (over[first] ?? 0) + 1;
    over[last + 1] = (over[last + 1] ?? 0) - 1;
  }
  for (let place = 1; place <= count; place += 1) over[place] = (over[place] ?? 0) + (over[place - 1] ?? 0);
  return over.subarray(0, count);
}
