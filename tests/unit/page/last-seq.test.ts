import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lastSeq } from '../../../src/chat/page/last-seq.js';
import { postOf, type FakeDesk } from '../../support/fake-desk.js';

/** Posts with these numbers; counts how often it was asked. */
function numbered(numbers: readonly number[]): { desk: Pick<FakeDesk, 'postsAfter'>; asked: () => number } {
  let asked = 0;
  const postsAfter: FakeDesk['postsAfter'] = (seq, limit) => {
    asked += 1;
    return numbers.filter((number) => number > seq).slice(0, limit).map((number) => ({ ...postOf(`k${number}`, ''), seq: number }));
  };
  return { desk: { postsAfter }, asked: () => asked };
}

test('the newest number, with or without gaps, 0 for none', () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 5_000 })), (numbers) => {
      const sorted = numbers.sort((a, b) => a - b);
      expect(lastSeq(numbered(sorted).desk)).toBe(sorted.at(-1) ?? 0);
    }),
  );
});

test('it does not read the whole feed to find it', () => {
  const { desk, asked } = numbered(Array.from({ length: 20_000 }, (_, index) => index + 1));
  expect(lastSeq(desk)).toBe(20_000);
  expect(asked()).toBeLessThan(40);
});
