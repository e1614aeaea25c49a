import { expect, it } from 'vitest';
import { laneOf } from '../../../src/store/lane.js';
import { HOME, inChannel, inThreadOf, JOB } from '../../contract/store-samples.js';

it('puts everything for the home channel into one lane, and every other channel into its own', () => {
  expect(laneOf(HOME)).toBe('home');
  expect(laneOf(inThreadOf(JOB))).toBe('home');
  expect(laneOf(inChannel('C1'))).toBe('C1');
  expect(laneOf({ kind: 'only-for', channel: 'C2', thread: '1.1', user: 'U1' })).toBe('C2');
});
