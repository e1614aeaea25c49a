/** Nodes of the 16-point Gauss-Legendre rule on -1…1 (positive half), and their weights, from Newton's method on P16. */
const RULE = legendreRule(16);

interface Node {
  readonly at: number;
  readonly weight: number;
}

/** Integral of a smooth function over an interval; exact for polynomials up to degree 31. */
export function integral(of: (x: number) => number, from: number, to: number): number {
  const middle = (from + to) / 2;
  const half = (to - from) / 2;
  let sum = 0;
  for (const node of RULE) sum += node.weight * (of(middle - half * node.at) + of(middle + half * node.at));
  return sum * half;
}

/** For an even number of points, which has no node in the middle. */
function legendreRule(points: number): readonly Node[] {
  return Array.from({ length: points / 2 }, (_, index) => {
    let at = Math.cos((Math.PI * (index + 0.75)) / (points + 0.5));
    for (let round = 0; round < 8; round += 1) at -= legendre(points, at).value / legendre(points, at).slope;
    const { slope } = legendre(points, at);
    return { at, weight: 2 / ((1 - at * at) * slope * slope) };
  });
}

/** Legendre polynomial and its derivative by the three-term recurrence. */
function legendre(degree: number, x: number): { readonly value: number; readonly slope: number } {
  let [before, value] = [1, x];
  for (let n = 2; n <= degree; n += 1) [before, value] = [value, ((2 * n - 1) * x * value - (n - 1) * before) / n];
  return { value, slope: (degree * (x * value - before)) / (x * x - 1) };
}
