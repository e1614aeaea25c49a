import { Solver } from 'odex';
import psychrolib from 'psychrolib';
import ICAL from 'ical.js';
import { expect, it } from 'vitest';
it('x', () => {
  const solver = new Solver(1);
  console.log(solver, psychrolib, Object.keys(ICAL).slice(0, 5));
  expect(1).toBe(1);
});
