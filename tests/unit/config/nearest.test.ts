import { describe, expect, it } from 'vitest';
import { nearest } from '../../../src/config/nearest.js';

const KNOWN = ['handling', 'full', 'sand', 'open', 'dry'];

describe('the nearest known word', () => {
  it.each([
    ['handlng', 'handling'],
    ['hanlding', 'handling'],
    ['Full', 'full'],
    ['opne', 'open'],
    ['sandd', 'sand'],
    ['dyr', 'dry'],
  ])('for %s is %s', (typed, meant) => {
    expect(nearest(typed, KNOWN)).toBe(meant);
  });

  it('is none when nothing is near, and among no words', () => {
    expect(nearest('colour', KNOWN)).toBeNull();
    expect(nearest('full', [])).toBeNull();
  });
});
