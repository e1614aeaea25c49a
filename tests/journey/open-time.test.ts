import { expect, it } from 'vitest';
import { Day } from '../support/day.js';

it('heat before the panel is closed starts no strength clock, and the answer still says by when to close', async () => {
  const day = await Day.begin();
  await day.at('08:00');
  await day.says('tomek', 'paste 501 P2');
  expect((await day.says('tomek', 'lamp 501 35')).text).toMatch(/Close the panel by 08:50/);
  expect(await day.milestone('501', 'open-limit')).toBe('08:50 running');
});
