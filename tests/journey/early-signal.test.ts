import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, it } from 'vitest';
import { Program, tempFolder } from '../support/program.js';

/** Asks for the cards again at the moment at which the program begins to load the house, long before it is open. */
const HOOKS = `
let asked = false;
export async function resolve(specifier, context, next) {
  if (!asked && specifier.endsWith('/app.js')) {
    asked = true;
    process.kill(process.pid, 'SIGUSR2');
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  return next(specifier, context);
}
`;

it('takes the signal for changed cards from the first moment on, and opens', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'cureclerk-signal-'));
  const hooks = join(folder, 'hooks.mjs');
  const preload = join(folder, 'preload.mjs');
  writeFileSync(hooks, HOOKS);
  writeFileSync(preload, `import { register } from 'node:module';\nregister(${JSON.stringify(pathToFileURL(hooks).href)});\n`);
  const program = await Program.start({ CURECLERK_DATA: tempFolder(), CURECLERK_CLOCK: '2026-03-03T08:00', NODE_OPTIONS: `--import=${pathToFileURL(preload).href}` });
  expect((await program.say('tomek', 'cure 501 P1')).text).toContain('501');
  expect(await program.stop()).toBe(0);
});
