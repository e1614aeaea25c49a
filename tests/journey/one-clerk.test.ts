import { spawnSync } from 'node:child_process';
import process from 'node:process';
import { expect, it } from 'vitest';
import { Program, tempFolder } from '../support/program.js';

const startOnce = (data: string): { readonly status: number | null; readonly stderr: string } => {
  const { PATH = '', HOME = '' } = process.env;
  return spawnSync(process.execPath, ['dist/main.js'], { env: { PATH, HOME, CURECLERK_PORT: '0', CURECLERK_LOG: 'error', CURECLERK_DATA: data }, encoding: 'utf8', timeout: 20_000 });
};

it('a second clerk on one data folder refuses and says who holds it; after a kill the folder is free at once', async () => {
  const data = tempFolder();
  const first = await Program.start({ CURECLERK_DATA: data });
  await first.say('tomek', 'cure 501 F1');
  const second = startOnce(data);
  expect(second.status).toBe(1);
  expect(second.stderr).toMatch(/is kept by another clerk \(process \d+ on .+, since \d{4}-/);
  expect((await first.job('501')).cures).toHaveLength(1);
  await first.kill();
  const third = await Program.start({ CURECLERK_DATA: data });
  expect((await third.job('501')).cures).toHaveLength(1);
  await third.stop();
});
