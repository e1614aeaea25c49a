import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, vi } from 'vitest';
import { Day } from '../support/day.js';

const ORDER = 'procedure: door\ntitle: our door\nversion: one\nsteps:\n  - { step: clean, do: Wipe it }\n';

/** The signal is taken between two messages: ask until the answer has changed. */
const soon = { timeout: 10_000, interval: 100 };

it('reads changed procedures while it runs; a mistake leaves all of them as they were; a job keeps its own', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'cureclerk-procedures-'));
  const file = join(folder, 'door.yaml');
  writeFileSync(file, ORDER);
  const day = await Day.begin('2026-03-02T09:00', { CURECLERK_PROCEDURES: folder });
  expect((await day.says('tomek', 'begin 501 door')).text).toContain('Wipe it');

  // The first file is right and new, the second goes in a circle: neither may be taken.
  writeFileSync(file, ORDER.replace('Wipe it', 'Wipe it twice'));
  writeFileSync(join(folder, 'bad.yaml'), 'procedure: roof\ntitle: roof\nversion: one\nsteps:\n  - { step: a, do: One, after: [b] }\n  - { step: b, do: Two, after: [a] }\n');
  day.program.signal('SIGUSR2');
  await new Promise((resolve) => setTimeout(resolve, 500));
  expect((await day.says('tomek', 'begin 502 door')).text).toMatch(/Wipe it\./);
  expect((await day.says('tomek', 'begin 503 roof')).text).not.toContain('begun');

  writeFileSync(join(folder, 'bad.yaml'), 'procedure: roof\ntitle: roof\nversion: one\nsteps:\n  - { step: a, do: One }\n');
  day.program.signal('SIGUSR2');
  await vi.waitFor(async () => { expect((await day.says('tomek', 'begin 504 roof')).text).toContain('begun'); }, soon);
  expect((await day.says('tomek', 'begin 505 door')).text).toContain('Wipe it twice');
  expect((await day.says('tomek', 'next 501')).text).toMatch(/Wipe it\./);
});
