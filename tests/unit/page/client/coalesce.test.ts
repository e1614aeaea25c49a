import { expect, test } from 'vitest';
import { coalesce } from '../../../../src/chat/page/client/coalesce.js';

test('many wishes during a run become one more run, never two at once', async () => {
  let runs = 0;
  let atOnce = 0;
  let most = 0;
  let release: () => void = () => undefined;
  const look = coalesce(async () => {
    runs += 1;
    most = Math.max(most, (atOnce += 1));
    await new Promise<void>((resolve) => { release = resolve; });
    atOnce -= 1;
  });
  const finish = async (): Promise<void> => {
    release();
    await new Promise((resolve) => { setImmediate(resolve); });
  };
  look();
  look();
  look();
  expect(runs).toBe(1);
  await finish();
  expect(runs).toBe(2);
  await finish();
  expect(runs).toBe(2);
  look();
  expect(runs).toBe(3);
  await finish();
  expect([runs, most]).toEqual([3, 1]);
});
