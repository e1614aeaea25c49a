import { describe, expect, it } from 'vitest';
import { backoffMs } from '../../../src/outbox/backoff.js';

describe('backoffMs', () => {
  it('doubles from one second to one minute', () => {
    expect([1, 2, 3, 4, 5, 6, 7, 8].map(backoffMs)).toEqual([1_000, 2_000, 4_000, 8_000, 16_000, 32_000, 60_000, 60_000]);
  });

  it('stays within its bounds whatever it is asked', () => {
    expect([0, -3, 1_000_000].map(backoffMs)).toEqual([1_000, 1_000, 60_000]);
  });
});
