import { existsSync } from 'node:fs';
import { expect, it, onTestFinished } from 'vitest';
import { z } from 'zod';
import { Day } from '../support/day.js';
import { Program, tempFolder } from '../support/program.js';

const Lines = z.object({ lines: z.array(z.object({ at: z.string(), text: z.string(), said: z.boolean() })) });

it('the practice shop has lines of its own, a standing clock, and leaves the real folder alone', async () => {
  const data = `${tempFolder()}/book`;
  const program = await Program.start({ CURECLERK_DATA: data }, ['practice']);
  const { lines } = Lines.parse(await program.get('/api/practice'));
  expect(lines[0]).toEqual({ at: '2026-03-03T08:40:00.000Z', text: 'paste 7203 P1', said: false });
  onTestFinished(async () => { await program.stop(); });
  await program.advance('PT10M');
  expect((await program.say('tomek', 'paste 7203 P1')).text).toContain('09:40');
  expect(existsSync(data)).toBe(false);
});

it('a book of real cars refuses a practice clock, and the other way round', async () => {
  const real = tempFolder();
  const first = await Program.start({ CURECLERK_DATA: real });
  await first.say('tomek', 'cure 501 P1');
  await first.stop();
  await expect(Program.start({ CURECLERK_DATA: real, CURECLERK_CLOCK: '2026-03-03T08:30' })).rejects.toThrow(/holds real cars/);
  const day = await Day.begin();
  await day.says('tomek', 'cure 501 P1');
  await expect(Program.start({ CURECLERK_DATA: await day.closedData() })).rejects.toThrow(/written with a practice clock/);
});
