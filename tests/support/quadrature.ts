import { integral } from '../../src/cure/quadrature.js';

/** Integral of a smooth function, panel by panel. */
export function integralOver(of: (x: number) => number, from: number, to: number, panels: number): number {
  const width = (to - from) / panels;
  let sum = 0;
  for (let panel = 0; panel < panels; panel += 1) sum += integral(of, from + panel * width, from + (panel + 1) * width);
  return sum;
}

/** Where a rising function takes a value, between two bounds. */
export function whereIs(value: number, of: (x: number) => number, low: number, high: number): number {
  let [under, over] = [low, high];
  for (let round = 0; round < 60; round += 1) {
    const middle = (under + over) / 2;
    if (of(middle) < value) under = middle;
    else over = middle;
  }
  return (under + over) / 2;
}
